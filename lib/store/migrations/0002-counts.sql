-- How many fit, by engine and venue version: worked out once.
create table counts (
  key      text        primary key,
  result   json        not null,
  made_at  timestamptz not null
);
