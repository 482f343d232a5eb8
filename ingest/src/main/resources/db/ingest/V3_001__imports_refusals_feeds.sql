CREATE SCHEMA IF NOT EXISTS ingest;

-- How files with a foreign header are read; the newest of a name counts, the others stay.
CREATE TABLE ingest.file_mapping (
  id   bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  name text   NOT NULL,
  at   timestamptz NOT NULL,
  by   text   NOT NULL,
  body text   NOT NULL
);
CREATE INDEX file_mapping_by_name ON ingest.file_mapping (name, id);

-- One uploaded file. "position" is the first byte that is not dealt with; it moves in one
-- transaction with the counts, so a restart begins where the last committed batch ended.
CREATE TABLE ingest.import (
  id           text   PRIMARY KEY,
  key          text   NOT NULL,
  name         text   NOT NULL,
  content_type text   NOT NULL,
  mapping      text,
  mapping_text text,
  by           text   NOT NULL,
  wards        text[] NOT NULL,
  every_ward   boolean NOT NULL,
  created_at   timestamptz NOT NULL,
  state        text   NOT NULL CHECK (state IN ('running', 'finished', 'refused')),
  length       bigint,
  received     bigint NOT NULL DEFAULT 0,
  complete     boolean NOT NULL DEFAULT false,
  position     bigint NOT NULL DEFAULT 0,
  starved      bigint NOT NULL DEFAULT 0,
  lines        bigint NOT NULL DEFAULT 0,
  header       bytea,
  rows_read    bigint NOT NULL DEFAULT 0,
  accepted     bigint NOT NULL DEFAULT 0,
  rejected     bigint NOT NULL DEFAULT 0,
  faults       text   NOT NULL DEFAULT '[]',
  worked_at    timestamptz NOT NULL,
  UNIQUE (by, key)
);
CREATE INDEX import_running ON ingest.import (worked_at) WHERE state = 'running';
CREATE INDEX import_newest ON ingest.import (created_at DESC);

-- What was uploaded and is not dealt with yet. Uncompressed, so that a piece is read by itself.
CREATE TABLE ingest.import_part (
  import   text   NOT NULL REFERENCES ingest.import (id),
  "offset" bigint NOT NULL,
  length   int    NOT NULL,
  bytes    bytea  NOT NULL,
  PRIMARY KEY (import, "offset")
);
ALTER TABLE ingest.import_part ALTER COLUMN bytes SET STORAGE EXTERNAL;

-- Rows that were refused, with their line in the file.
CREATE TABLE ingest.import_row (
  import   text   NOT NULL REFERENCES ingest.import (id),
  "offset" bigint NOT NULL,
  line     bigint NOT NULL,
  bytes    bytea  NOT NULL,
  faults   text   NOT NULL,
  PRIMARY KEY (import, "offset")
);

-- Everything that was refused, byte for byte. Nobody changes or removes a row.
CREATE TABLE ingest.refusal (
  id           text   PRIMARY KEY,
  origin       text   NOT NULL,
  source       text   NOT NULL,
  target       text   NOT NULL,
  received_at  timestamptz NOT NULL,
  content_type text   NOT NULL,
  bytes        bytea  NOT NULL,
  faults       text   NOT NULL,
  rules        text[] NOT NULL,
  replay_of    text
);
CREATE INDEX refusal_newest ON ingest.refusal (received_at DESC, id) WHERE replay_of IS NULL;
CREATE INDEX refusal_by_origin ON ingest.refusal (origin, received_at DESC)
  WHERE replay_of IS NULL;
CREATE INDEX refusal_by_rule ON ingest.refusal USING gin (rules);

-- The journal of mending: who asked for which replay, with which bytes, and what became of it.
CREATE TABLE ingest.replay (
  id         bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  refusal    text   NOT NULL REFERENCES ingest.refusal (id),
  at         timestamptz NOT NULL,
  by         text   NOT NULL,
  wards      text[] NOT NULL,
  every_ward boolean NOT NULL,
  mended     bytea
);
CREATE INDEX replay_by_refusal ON ingest.replay (refusal, id);
CREATE TABLE ingest.replay_outcome (
  replay  bigint PRIMARY KEY REFERENCES ingest.replay (id),
  refusal text   NOT NULL REFERENCES ingest.refusal (id),
  at      timestamptz NOT NULL,
  outcome text   NOT NULL CHECK (outcome IN ('accepted', 'partly', 'refused')),
  faults  text   NOT NULL
);
CREATE INDEX replay_outcome_accepted ON ingest.replay_outcome (refusal)
  WHERE outcome = 'accepted';
-- Which of them are still to be done. A row, so that no crash loses one.
CREATE TABLE ingest.replay_waiting (
  replay  bigint PRIMARY KEY REFERENCES ingest.replay (id),
  refusal text   NOT NULL UNIQUE
);

CREATE FUNCTION ingest.refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'what was refused, and what was done about it, is append-only'
    USING ERRCODE = 'insufficient_privilege';
END
$$;
CREATE TRIGGER refusal_is_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ingest.refusal
  FOR EACH STATEMENT EXECUTE FUNCTION ingest.refuse_change();
CREATE TRIGGER replay_is_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ingest.replay
  FOR EACH STATEMENT EXECUTE FUNCTION ingest.refuse_change();
CREATE TRIGGER replay_outcome_is_append_only
  BEFORE UPDATE OR DELETE OR TRUNCATE ON ingest.replay_outcome
  FOR EACH STATEMENT EXECUTE FUNCTION ingest.refuse_change();

-- What each feed brought, minute by minute. Lags in milliseconds, summed over the assessments.
CREATE TABLE ingest.feed_minute (
  source      text   NOT NULL,
  origin      text   NOT NULL,
  minute      timestamptz NOT NULL,
  assessments bigint NOT NULL,
  moves       bigint NOT NULL,
  refused     bigint NOT NULL,
  entry_lag   bigint NOT NULL,
  arrival_lag bigint NOT NULL,
  last_at     timestamptz NOT NULL,
  PRIMARY KEY (source, origin, minute)
);
CREATE TABLE ingest.feed (
  source  text NOT NULL,
  origin  text NOT NULL,
  last_at timestamptz NOT NULL,
  PRIMARY KEY (source, origin)
);

-- How far the topics were read into these tables; moves in one transaction with them.
CREATE TABLE ingest.topic_position (
  topic       text   NOT NULL,
  partition   int    NOT NULL,
  next_offset bigint NOT NULL,
  PRIMARY KEY (topic, partition)
);

GRANT USAGE ON SCHEMA ingest TO "${app_role}";
GRANT SELECT, INSERT ON ingest.file_mapping, ingest.refusal, ingest.replay, ingest.replay_outcome
  TO "${app_role}";
GRANT SELECT, INSERT, UPDATE ON ingest.import, ingest.feed, ingest.topic_position
  TO "${app_role}";
GRANT SELECT, INSERT, DELETE ON ingest.import_part TO "${app_role}";
GRANT SELECT, INSERT ON ingest.import_row TO "${app_role}";
-- To take a row of the queue for oneself needs the right to update it.
GRANT SELECT, INSERT, UPDATE, DELETE ON ingest.feed_minute, ingest.replay_waiting
  TO "${app_role}";
