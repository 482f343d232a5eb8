-- Codes that came in and meant nothing to us, each feed's for itself. A code stays when it is mapped.
CREATE TABLE ingest.foreign_code (
  id       text   PRIMARY KEY,
  source   text   NOT NULL,
  system   text   NOT NULL,
  code     text   NOT NULL,
  text     text,
  units    text[] NOT NULL,
  messages bigint NOT NULL,
  first_at timestamptz NOT NULL,
  last_at  timestamptz NOT NULL,
  example  text   NOT NULL REFERENCES ingest.refusal (id),
  UNIQUE (source, system, code)
);
CREATE INDEX foreign_code_most_frequent ON ingest.foreign_code (messages DESC, id);

-- Which refusals carried it.
CREATE TABLE ingest.foreign_code_refusal (
  code    text NOT NULL REFERENCES ingest.foreign_code (id),
  refusal text NOT NULL REFERENCES ingest.refusal (id),
  PRIMARY KEY (code, refusal)
);

-- The journal of mapping: who said what a code means. The latest word about a code counts; without a
-- finding, what was said before is taken back.
CREATE TABLE ingest.code_mapping (
  id         bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  code       text   NOT NULL REFERENCES ingest.foreign_code (id),
  at         timestamptz NOT NULL,
  by         text   NOT NULL,
  every_feed boolean NOT NULL,
  finding    text,
  site       text,
  side       text,
  unit       text,
  words      text   NOT NULL
);
CREATE INDEX code_mapping_by_code ON ingest.code_mapping (code, id DESC);
CREATE TRIGGER code_mapping_is_append_only
  BEFORE UPDATE OR DELETE OR TRUNCATE ON ingest.code_mapping
  FOR EACH STATEMENT EXECUTE FUNCTION ingest.refuse_change();

GRANT SELECT, INSERT, UPDATE ON ingest.foreign_code TO "${app_role}";
GRANT SELECT, INSERT ON ingest.foreign_code_refusal, ingest.code_mapping TO "${app_role}";
