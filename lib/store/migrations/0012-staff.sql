-- Who did what at the desk, by a number: addresses stand in one table alone, from which they can be taken. History and versions are only
-- added to, so an address written into them could never go.
create table staff (
  id       integer     generated always as identity primary key,
  email    text        unique check (email = lower(email)),
  left_at  timestamptz
);
insert into staff (email)
  select distinct lower(trim(one)) from (
    select substr(who, 7) as one from history where who like 'desk: %'
    union all select saved_by from venue_versions
    union all select email from people union all select invited_by from people
  ) found where one like '%@%' order by 1;

alter table history add column staff integer references staff (id);
alter table history disable trigger history_only_added;
update history set staff = s.id from staff s where who like 'desk: %' and s.email = lower(trim(substr(who, 7)));
update history set who = 'desk' where who like 'desk: %';
-- The words of a return stand with its revision, from which they can be erased.
update history set data = (data::jsonb - 'reason')::json where what = 'returned';
alter table history enable trigger history_only_added;

alter table venue_versions add column staff integer references staff (id);
alter table venue_versions disable trigger venue_versions_only_added;
update venue_versions set staff = s.id from staff s where s.email = lower(trim(saved_by));
alter table venue_versions enable trigger venue_versions_only_added;
alter table venue_versions drop column saved_by;

alter table people add column staff integer references staff (id);
update people set staff = s.id from staff s where s.email = lower(trim(invited_by));
alter table people drop column invited_by;
update adjustments set changed_by = split_part(changed_by, ':', 1);
update late_changes set made_by = split_part(made_by, ':', 1);

-- Who was let go before leaves no address.
update links set person = null where person in (select email from people where revoked_at is not null);
update sessions set person = null, ended_at = coalesce(ended_at, now()) where person in (select email from people where revoked_at is not null);
delete from mails where kind like 'desk-%' and recipient in (select email from people where revoked_at is not null);
update staff set email = null, left_at = now() where email in (select email from people where revoked_at is not null);
delete from people where revoked_at is not null;
alter table people drop column revoked_at;
