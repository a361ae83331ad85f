-- A couple that wants no more reminders: by a link of its own, which the mail's header carries (RFC 8058) while it waits.
alter table links drop constraint links_purpose_check;
alter table links add constraint links_purpose_check check (purpose in ('couple', 'desk', 'look', 'quiet'));
alter table bookings add column quiet_at timestamptz;
alter table mails add column unsubscribe text;
