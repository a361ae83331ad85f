-- Whom an answer reaches; and a name for mails that may be queued once only, whoever thinks of them and how often.
alter table mails add column reply_to text;
alter table mails add column once_key text unique;
