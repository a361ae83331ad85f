-- What stands for a revision to the last word (a hash, and the salt that goes when its names go), and when its names went.
alter table revisions add column whole text;
alter table revisions add column salt text;
alter table revisions add column erased_at timestamptz;
alter table bookings add column erased_at timestamptz;
-- Words about a closing are free text: the history, which is only added to, no longer holds them.
alter table bookings add column closed_reason text;

-- A revision that was sent may lose its names once, and nothing else: which words those are, and that the fingerprint still
-- comes out, is for the service to see to; that fingerprint, whole and venue stay is seen to here.
create or replace function refuse_change_of_sent() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE'
    or new.booking <> old.booking or new.number <> old.number or new.fingerprint <> old.fingerprint
    or new.venue_version <> old.venue_version or new.whole is distinct from old.whole or new.sent_at <> old.sent_at
    or old.erased_at is not null then
    raise exception '% of a revision that was sent is refused', tg_op;
  end if;
  if new.erased_at is not null then
    if new.salt is not null or new.agreed_at is distinct from old.agreed_at then
      raise exception 'an erasure that leaves the salt or changes an agreement is refused';
    end if;
    return new;
  end if;
  if old.agreed_at is not null or new.salt is distinct from old.salt
    or new.brief::text <> old.brief::text or new.layout::text <> old.layout::text
    or new.quote::text <> old.quote::text or new.findings::text <> old.findings::text then
    raise exception '% of a revision that was sent is refused', tg_op;
  end if;
  return new;
end $$;
