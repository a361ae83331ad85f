-- What the venue set itself when nothing had come by the due date: its standard layout, with the version it was taken from. It is not agreed.
alter table bookings add column set_layout json;
alter table bookings add column set_version integer;
alter table bookings add column set_at timestamptz;
