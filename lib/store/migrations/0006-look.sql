-- Links that show a couple's day and change nothing: for whom each was made, and the visits that it opened, so that they end with it.
alter table links drop constraint links_purpose_check;
alter table links add constraint links_purpose_check check (purpose in ('couple', 'desk', 'look'));
alter table links add column label text;
alter table sessions drop constraint sessions_side_check;
alter table sessions add constraint sessions_side_check check (side in ('couple', 'desk', 'look'));
alter table sessions add column link text;
-- What a couple last asked of the desk, in their own words: a change of what is agreed, or a draft. Free text, so it is not in the history.
alter table bookings add column asked json;
