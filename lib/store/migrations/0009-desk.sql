-- Which rooms an agreed booking holds, and when, by the venue's own clocks. No two hold one room at once: that is kept here, so that
-- two people who agree at the same moment cannot both be right. Ranges alone are compared, for which no extension is needed; the
-- room goes in by a hash of 64 bits.
create table held_rooms (
  booking  text       not null references bookings (reference),
  venue    text       not null,
  room     text       not null,
  starts   timestamp  not null,
  ends     timestamp  not null check (ends > starts),
  primary key (booking, room),
  constraint one_booking_at_a_time exclude using gist (
    (int8range(hashtextextended(venue || '/' || room, 0), hashtextextended(venue || '/' || room, 0), '[]')) with &&,
    (tsrange(starts, ends)) with &&
  )
);
-- What was agreed before holds its rooms from six to six; of two that clash already, the earlier agreed.
insert into held_rooms (booking, venue, room, starts, ends)
  select distinct b.reference, b.venue, room.value, b.event_date + time '06:00', b.event_date + 1 + time '06:00'
  from bookings b join revisions r on r.booking = b.reference and r.agreed_at is not null,
    json_array_elements(r.layout -> 'scenes') scene, json_array_elements_text(scene.value -> 'rooms') room
  where b.state = 'agreed'
  on conflict do nothing;

-- Who else works at the desk: those that the settings name are managers and stand in no table.
create table people (
  email       text        primary key check (email = lower(email)),
  role        text        not null check (role in ('desk-look', 'desk', 'manager')),
  invited_at  timestamptz not null,
  invited_by  text        not null,
  revoked_at  timestamptz
);

-- A new guest count on an agreed layout, worked out and not taken yet.
create table late_changes (
  booking   text        primary key references bookings (reference),
  number    integer     not null,
  brief     json        not null,
  result    json        not null,
  made_at   timestamptz not null,
  made_by   text        not null
);

-- The numbers that the caterer cooks for, which are given later than the layout.
alter table bookings add column final_guests json;
alter table bookings add column final_at timestamptz;
-- The pieces of the layout that a return speaks of.
alter table revisions add column pieces json;

create index bookings_state on bookings (state, due_date, reference);
create index bookings_address on bookings (lower(email));
