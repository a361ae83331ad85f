-- A sign-in to the desk opens in the browser that asked for it alone (ASVS 5.0, 6.6.2): the hash of a secret that its cookie holds. Null where no browser asked.
alter table link_asks add column browser text;
alter table links add column browser text;
