-- A layout under the hand: what it began from, what was done to it, and how it stands. One for each booking; undo and redo live in it.
create table adjustments (
  booking     text        primary key references bookings (reference),
  revision    integer     not null,
  start       text        not null,
  taken       text,
  base        json        not null,
  work        json        not null,
  changed_at  timestamptz not null,
  changed_by  text        not null
);
