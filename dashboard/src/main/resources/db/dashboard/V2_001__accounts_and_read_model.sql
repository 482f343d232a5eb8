-- Accounts, and what the screens read. ${app_role} is the role the application connects as; the
-- tables belong to the role that runs this.
CREATE SCHEMA IF NOT EXISTS dashboard;

CREATE TABLE dashboard.account (
    name          text PRIMARY KEY,
    display_name  text NOT NULL,
    password_hash text NOT NULL,
    roles         text[] NOT NULL,
    wards         text[] NOT NULL
);

-- Failed sign-ins, by account and by account and address. Old rows are removed by the application.
CREATE TABLE dashboard.sign_in_failure (
    subject      text PRIMARY KEY,
    failures     int NOT NULL,
    last_at      timestamptz NOT NULL,
    locked_until timestamptz NOT NULL
);
CREATE INDEX sign_in_failure_last_at ON dashboard.sign_in_failure (last_at);

-- Who looked at which patient. The application can add and read, not change or remove.
CREATE TABLE dashboard.access (
    id        bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    at        timestamptz NOT NULL,
    account   text NOT NULL,
    encounter text NOT NULL,
    ward      text NOT NULL,
    what      text NOT NULL
);
CREATE INDEX access_by_encounter ON dashboard.access (encounter, at);
CREATE INDEX access_by_account ON dashboard.access (account, at);

-- The read model. Every row is the newest version of what a topic said under its key; a write with
-- an older version changes nothing, so order and repetition of the topics do not matter. There are
-- no foreign keys: a snapshot may arrive before its encounter.
CREATE TABLE dashboard.encounter (
    encounter text PRIMARY KEY,
    version   bigint NOT NULL,
    ward      text NOT NULL,
    present   boolean NOT NULL,
    body      jsonb NOT NULL
);
CREATE INDEX encounter_on_ward ON dashboard.encounter (ward) WHERE present;

CREATE TABLE dashboard.care_plan (
    encounter text PRIMARY KEY,
    version   bigint NOT NULL,
    body      jsonb NOT NULL
);

CREATE TABLE dashboard.assessment (
    encounter  text NOT NULL,
    assessment text NOT NULL,
    revision   int NOT NULL,
    taken_at   timestamptz NOT NULL,
    body       jsonb NOT NULL,
    PRIMARY KEY (encounter, assessment)
);
CREATE INDEX assessment_history ON dashboard.assessment (encounter, taken_at);

CREATE TABLE dashboard.snapshot (
    encounter  text NOT NULL,
    assessment text NOT NULL,
    sequence   bigint NOT NULL,
    as_of      timestamptz NOT NULL,
    latest     boolean NOT NULL,
    withdrawn  boolean NOT NULL,
    score      text,
    low        numeric,
    high       numeric,
    body       jsonb NOT NULL,
    PRIMARY KEY (encounter, assessment)
);
CREATE INDEX snapshot_history ON dashboard.snapshot (encounter, as_of) WHERE NOT withdrawn;
-- The newest picture is the one scoring called latest last, of those not withdrawn since.
CREATE INDEX snapshot_newest ON dashboard.snapshot (encounter, sequence)
    WHERE latest AND NOT withdrawn;

CREATE TABLE dashboard.episode (
    episode   text PRIMARY KEY,
    encounter text NOT NULL,
    version   bigint NOT NULL,
    running   boolean NOT NULL,
    opened_at timestamptz NOT NULL,
    body      jsonb NOT NULL
);
CREATE INDEX episode_by_encounter ON dashboard.episode (encounter, opened_at);
CREATE INDEX episode_running ON dashboard.episode (encounter) WHERE running;

CREATE TABLE dashboard.episode_change (
    sequence bigint PRIMARY KEY,
    episode  text NOT NULL,
    body     jsonb NOT NULL
);
CREATE INDEX episode_story ON dashboard.episode_change (episode, sequence);

GRANT USAGE ON SCHEMA dashboard TO "${app_role}";
GRANT SELECT, INSERT, UPDATE, DELETE
    ON dashboard.account, dashboard.sign_in_failure,
       dashboard.encounter, dashboard.care_plan, dashboard.assessment, dashboard.snapshot,
       dashboard.episode, dashboard.episode_change
    TO "${app_role}";
GRANT SELECT, INSERT ON dashboard.access TO "${app_role}";
