-- A venue as it is being written, not whole yet: no booking uses it. `base`: the version that it began from, 0 for a venue from nothing;
-- `number` counts its saves, so that two who write at once are told.
create table venue_drafts (
  venue     text        primary key,
  base      integer     not null,
  number    integer     not null,
  file      json        not null,
  saved_at  timestamptz not null,
  staff     integer     references staff (id)
);

-- New numbers on what is agreed, asked for and not worked out yet. Whoever works on it claims it until a moment: a process that stops in
-- between loses nothing.
create table late_works (
  booking   text        primary key references bookings (reference),
  number    integer     not null,
  brief     json        not null,
  asked_at  timestamptz not null,
  asked_by  text        not null,
  tries     integer     not null default 0,
  until     timestamptz,
  fault     text
);

-- A venue's standard layout is put under the hand as a booking's is; its key is the venue's, so it points at no booking.
alter table adjustments drop constraint adjustments_booking_fkey;
