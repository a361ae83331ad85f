-- How many bookings stand in each state, kept as they change: counting ten thousand for every look at the queue costs more than the rest of it.
-- One row a venue and state; a change of state touches its two rows in the order of their names, so that two changes never wait in a ring.
create table booking_counts (
  venue  text    not null,
  state  text    not null,
  n      integer not null,
  primary key (venue, state)
);
insert into booking_counts (venue, state, n) select venue, state, count(*) from bookings group by venue, state;

create function count_booking(of_venue text, of_state text, by integer) returns void language sql as $$
  insert into booking_counts as c (venue, state, n) values (of_venue, of_state, by) on conflict (venue, state) do update set n = c.n + by
$$;
create function count_bookings() returns trigger language plpgsql as $$
begin
  if tg_op = 'INSERT' then
    perform count_booking(new.venue, new.state, 1);
  elsif tg_op = 'DELETE' then
    perform count_booking(old.venue, old.state, -1);
  elsif (old.venue, old.state) < (new.venue, new.state) then
    perform count_booking(old.venue, old.state, -1);
    perform count_booking(new.venue, new.state, 1);
  elsif (old.venue, old.state) > (new.venue, new.state) then
    perform count_booking(new.venue, new.state, 1);
    perform count_booking(old.venue, old.state, -1);
  end if;
  return null;
end $$;
create trigger bookings_counted after insert or delete or update of venue, state on bookings for each row execute function count_bookings();

-- What a booking is found by: names, reference and address without accents and capitals, and the runs of two and three characters in it. Runs in an
-- array with a common index find any part of a name, and need no extension.
create table booking_search (
  booking   text    primary key references bookings (reference),
  found_by  text    not null,
  grams     text[]  not null
);
create index booking_search_grams on booking_search using gin (grams);

-- Each way of looking at the queue in its own order, so that a page is read from where it begins.
create index bookings_queue_day on bookings ((case state when 'agreed' then 1 when 'closed' then 2 else 0 end), event_date, reference);
create index bookings_state_day on bookings (state, event_date, reference);
create index bookings_open_due on bookings (due_date, reference) where state in ('invited', 'started', 'returned');
create index bookings_open_day on bookings (event_date, reference) where state in ('invited', 'started', 'returned');
create index bookings_venue_queue on bookings (venue, (case state when 'agreed' then 1 when 'closed' then 2 else 0 end), due_date, reference);
create index bookings_venue_state on bookings (venue, state, due_date, reference);
