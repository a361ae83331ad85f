-- The queue in its order, so that one page of it is found without sorting all: what waits for someone, what is agreed, what is closed.
create index bookings_queue on bookings ((case state when 'agreed' then 1 when 'closed' then 2 else 0 end), due_date, reference);
