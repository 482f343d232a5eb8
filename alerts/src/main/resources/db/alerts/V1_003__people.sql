-- Who is on duty, and was. A running shift has no end yet; its row is locked while somebody decides
-- who owns an episode.
CREATE SEQUENCE alerts.shift_number;
CREATE TABLE alerts.shift (
  id       text PRIMARY KEY,
  ward     text NOT NULL,
  account  text NOT NULL,
  from_at  timestamptz NOT NULL,
  until    timestamptz NOT NULL,
  ended_at timestamptz,
  body     jsonb NOT NULL
);
CREATE INDEX shift_running ON alerts.shift (ward) WHERE ended_at IS NULL;
CREATE INDEX shift_by_account ON alerts.shift (account, ended_at);
CREATE INDEX shift_by_ward ON alerts.shift (ward, from_at);

-- What a response team did for an episode.
CREATE TABLE alerts.call (
  episode   text PRIMARY KEY,
  encounter text NOT NULL,
  ward      text NOT NULL,
  began_at  timestamptz NOT NULL,
  finished  boolean NOT NULL,
  body      jsonb NOT NULL
);
CREATE INDEX call_by_ward ON alerts.call (ward, began_at);

-- Arrest, move to intensive care, death: what the audit counts.
CREATE SEQUENCE alerts.event_number;
CREATE TABLE alerts.event (
  id        text PRIMARY KEY,
  encounter text NOT NULL,
  ward      text NOT NULL,
  at        timestamptz NOT NULL,
  body      jsonb NOT NULL
);
CREATE INDEX event_by_ward ON alerts.event (ward, at);

-- What was said when a patient was handed over, and the sheets of the shifts.
CREATE SEQUENCE alerts.handover_number;
CREATE TABLE alerts.handover (
  id        text PRIMARY KEY,
  encounter text NOT NULL,
  at        timestamptz NOT NULL,
  body      jsonb NOT NULL
);
CREATE INDEX handover_by_encounter ON alerts.handover (encounter, at);
CREATE TABLE alerts.ward_handover (
  id       text PRIMARY KEY,
  ward     text NOT NULL,
  given_at timestamptz NOT NULL,
  body     jsonb NOT NULL
);
CREATE INDEX ward_handover_by_ward ON alerts.ward_handover (ward, given_at);

GRANT USAGE ON SEQUENCE alerts.shift_number, alerts.event_number, alerts.handover_number
  TO "${app_role}";
GRANT SELECT, INSERT, UPDATE ON alerts.shift, alerts.call, alerts.ward_handover TO "${app_role}";
GRANT SELECT, INSERT ON alerts.event, alerts.handover TO "${app_role}";
