-- What a couple chose to read, kept with their booking: their mails and papers follow it, and so do their pages on another device.
-- Null: as their venue speaks. A language by its tag (BCP 47).
alter table bookings add column language text check (length(language) <= 35);
alter table bookings add column lengths text check (lengths in ('metric', 'imperial'));
