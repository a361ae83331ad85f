-- Written for PostgreSQL 15 and later. JSON is kept as `json`, not `jsonb`: the text stays as it was written.

create table venue_versions (
  venue     text        not null,
  version   integer     not null,
  file      json        not null,
  hash      text        not null,
  saved_at  timestamptz not null,
  saved_by  text        not null,
  primary key (venue, version)
);

create table bookings (
  reference   text        primary key,
  venue       text        not null,
  names       json        not null,
  email       text        not null,
  package     text        not null,
  event_date  date        not null,
  due_date    date        not null,
  state       text        not null check (state in ('invited', 'started', 'sent', 'returned', 'agreed', 'closed')),
  revision    integer     not null default 0,
  draft       json        not null,
  chosen      json,
  chosen_key  text,
  created_at  timestamptz not null,
  changed_at  timestamptz not null
);
create index bookings_due on bookings (due_date, reference);

create table revisions (
  booking        text        not null references bookings (reference),
  number         integer     not null,
  brief          json        not null,
  layout         json        not null,
  quote          json        not null,
  findings       json        not null,
  venue_version  integer     not null,
  fingerprint    text        not null,
  sent_at        timestamptz not null,
  returned_at    timestamptz,
  agreed_at      timestamptz,
  reason         text,
  primary key (booking, number)
);

create table links (
  hash        text        primary key,
  purpose     text        not null check (purpose in ('couple', 'desk')),
  booking     text        references bookings (reference),
  person      text,
  once        boolean     not null,
  made_at     timestamptz not null,
  expires_at  timestamptz not null,
  used_at     timestamptz,
  revoked_at  timestamptz
);
create index links_booking on links (booking);

create table sessions (
  hash        text        primary key,
  side        text        not null check (side in ('couple', 'desk')),
  booking     text        references bookings (reference),
  person      text,
  made_at     timestamptz not null,
  seen_at     timestamptz not null,
  ended_at    timestamptz
);

create table mails (
  id          bigint      generated always as identity primary key,
  kind        text        not null,
  booking     text        references bookings (reference),
  recipient   text        not null,
  from_name   text        not null,
  subject     text        not null,
  body_text   text        not null,
  body_html   text        not null,
  message_id  text        not null,
  state       text        not null check (state in ('queued', 'sending', 'sent', 'failed')),
  why         text,
  attempts    integer     not null default 0,
  due_at      timestamptz not null,
  queued_at   timestamptz not null,
  sent_at     timestamptz
);
create index mails_due on mails (due_at) where state in ('queued', 'sending');
create index mails_booking on mails (booking);

create table history (
  id       bigint      generated always as identity primary key,
  booking  text        references bookings (reference),
  at       timestamptz not null,
  who      text        not null,
  what     text        not null,
  data     json        not null
);
create index history_booking on history (booking, id);

create table arrangements (
  key      text        primary key,
  result   json        not null,
  made_at  timestamptz not null
);

-- What happened is only ever added to; what was sent or saved is only ever answered.
create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% of % is refused: rows are only added', tg_op, tg_table_name;
end $$;
create trigger history_only_added before update or delete on history for each row execute function refuse_change();
create trigger venue_versions_only_added before update or delete on venue_versions for each row execute function refuse_change();

create function refuse_change_of_sent() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' or old.agreed_at is not null
    or new.booking <> old.booking or new.number <> old.number or new.fingerprint <> old.fingerprint
    or new.venue_version <> old.venue_version or new.brief::text <> old.brief::text or new.layout::text <> old.layout::text
    or new.quote::text <> old.quote::text or new.findings::text <> old.findings::text then
    raise exception '% of a revision that was sent is refused', tg_op;
  end if;
  return new;
end $$;
create trigger revisions_stay before update or delete on revisions for each row execute function refuse_change_of_sent();
