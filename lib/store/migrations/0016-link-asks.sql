-- Links that someone asked for at the door. Noting it is all that is done before the answer, so that the answer tells nothing of who is known here; the
-- postman works it out. A row stands for seconds.
create table link_asks (
  id        bigint      generated always as identity primary key,
  side      text        not null check (side in ('couple', 'desk')),
  -- As it was typed, or the booking that an old link belonged to; neither where the link was unknown.
  address   text,
  booking   text        references bookings (reference),
  asked_at  timestamptz not null
);
