CREATE SCHEMA IF NOT EXISTS ground;

-- What could not be worked, byte for byte, so that everything else could go on.
CREATE TABLE ground.quarantine (
  -- Where it lies: topic/partition/offset, or table/key.
  place      text PRIMARY KEY,
  part       text NOT NULL,
  -- Whom it is about, or which area; pages that show either say so.
  subject    text,
  area       text,
  -- What follows for whoever reads the page, a sentence.
  means      text NOT NULL,
  reason     text NOT NULL,
  payload    bytea,
  first_at   timestamptz NOT NULL,
  -- A row is tried again from then on; a record of a topic is not.
  again      timestamptz,
  -- Pages speak of it until then; what still fails is said again.
  told_until timestamptz NOT NULL
);
CREATE INDEX quarantine_told ON ground.quarantine (told_until);

GRANT USAGE ON SCHEMA ground TO "${app_role}";
GRANT SELECT, INSERT, UPDATE, DELETE ON ground.quarantine TO "${app_role}";
