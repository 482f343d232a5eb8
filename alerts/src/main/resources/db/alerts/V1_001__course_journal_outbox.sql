CREATE SCHEMA IF NOT EXISTS alerts;

-- One row for each encounter: everything that decisions rest on. Locking it is how two instances,
-- or a person and a clock, take turns.
CREATE TABLE alerts.course (
  encounter text PRIMARY KEY,
  ward      text  NOT NULL,
  bed       text,
  present   boolean NOT NULL,
  body      jsonb NOT NULL
);

-- What others see of each episode, running or over; always written together with its course.
CREATE TABLE alerts.episode (
  id        text   PRIMARY KEY,
  encounter text   NOT NULL,
  ward      text   NOT NULL,
  state     text   NOT NULL,
  level     text   NOT NULL,
  due       timestamptz,
  opened_at timestamptz NOT NULL,
  body      jsonb  NOT NULL,
  CONSTRAINT every_running_episode_has_a_clock CHECK ((state = 'closed') = (due IS NULL))
);
CREATE UNIQUE INDEX episode_one_running ON alerts.episode (encounter) WHERE state <> 'closed';
CREATE INDEX episode_running_by_ward ON alerts.episode (ward) WHERE state <> 'closed';
CREATE INDEX episode_by_encounter ON alerts.episode (encounter, opened_at);

-- The clocks that run. A row is due, whoever sees it first.
CREATE TABLE alerts.deadline (
  encounter text NOT NULL,
  kind      text NOT NULL,
  due       timestamptz NOT NULL,
  PRIMARY KEY (encounter, kind)
);
CREATE INDEX deadline_due ON alerts.deadline (due);

-- Every version of every care plan.
CREATE TABLE alerts.care_plan (
  encounter text   NOT NULL,
  version   bigint NOT NULL,
  body      jsonb  NOT NULL,
  PRIMARY KEY (encounter, version)
);

-- The record. Nobody changes or removes an entry; the hash of each covers the one before.
CREATE TABLE alerts.journal (
  sequence bigint PRIMARY KEY,
  at       timestamptz NOT NULL,
  subject  text NOT NULL,
  kind     text NOT NULL,
  by       text NOT NULL,
  body     text NOT NULL,
  previous text NOT NULL,
  hash     text NOT NULL
);
CREATE INDEX journal_by_subject ON alerts.journal (subject, sequence);

-- The end of the chain. Its lock makes entries take turns, so sequence has no gap.
CREATE TABLE alerts.journal_head (
  one_row  boolean PRIMARY KEY DEFAULT true CHECK (one_row),
  sequence bigint NOT NULL,
  hash     text   NOT NULL
);
INSERT INTO alerts.journal_head (sequence, hash) VALUES (0, repeat('0', 64));

CREATE FUNCTION alerts.refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the journal is append-only' USING ERRCODE = 'insufficient_privilege';
END
$$;
CREATE TRIGGER journal_is_append_only BEFORE UPDATE OR DELETE ON alerts.journal
  FOR EACH ROW EXECUTE FUNCTION alerts.refuse_change();
CREATE TRIGGER journal_is_never_emptied BEFORE TRUNCATE ON alerts.journal
  FOR EACH STATEMENT EXECUTE FUNCTION alerts.refuse_change();

-- What the journal has and Kafka has not yet. Numbered by the journal, so in its order.
CREATE TABLE alerts.outbox (
  sequence bigint PRIMARY KEY,
  topic    text  NOT NULL,
  key      text  NOT NULL,
  payload  text  NOT NULL
);

-- Records of the stream that could not be read, byte for byte, with the reason.
CREATE TABLE alerts.quarantine (
  topic     text   NOT NULL,
  partition int    NOT NULL,
  "offset"  bigint NOT NULL,
  at        timestamptz NOT NULL,
  reason    text   NOT NULL,
  payload   bytea,
  PRIMARY KEY (topic, partition, "offset")
);

GRANT USAGE ON SCHEMA alerts TO "${app_role}";
GRANT SELECT, INSERT, UPDATE, DELETE ON alerts.course, alerts.episode, alerts.deadline,
  alerts.care_plan, alerts.outbox, alerts.quarantine TO "${app_role}";
GRANT SELECT, INSERT ON alerts.journal TO "${app_role}";
REVOKE UPDATE, DELETE, TRUNCATE ON alerts.journal FROM "${app_role}";
GRANT SELECT, UPDATE ON alerts.journal_head TO "${app_role}";
