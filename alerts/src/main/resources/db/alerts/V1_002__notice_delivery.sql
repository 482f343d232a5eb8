-- An alarm of which people are told: one row for each, written with its journal entry.
CREATE TABLE alerts.notice (
  sequence  bigint PRIMARY KEY REFERENCES alerts.journal,
  episode   text NOT NULL,
  encounter text NOT NULL,
  ward      text NOT NULL,
  level     text NOT NULL,
  rung      int  NOT NULL,
  tone      boolean NOT NULL,
  at        timestamptz NOT NULL,
  due       timestamptz NOT NULL
);
CREATE INDEX notice_by_episode ON alerts.notice (episode, sequence);

-- One alarm for one address. The key is what a receiver knows a repetition by.
CREATE TABLE alerts.delivery (
  key       text PRIMARY KEY,
  notice    bigint NOT NULL REFERENCES alerts.notice,
  channel   text NOT NULL,
  recipient text NOT NULL,
  address   text NOT NULL,
  audiences text[] NOT NULL,
  state     text NOT NULL,
  attempts  int  NOT NULL DEFAULT 0,
  next      timestamptz,
  changed   timestamptz NOT NULL,
  why       text,
  -- Whether the ladder still has to hear that it failed.
  unheard   boolean NOT NULL DEFAULT false,
  CONSTRAINT what_is_not_settled_is_tried_again
    CHECK ((state IN ('waiting', 'failed')) = (next IS NOT NULL)),
  CONSTRAINT only_a_failure_is_unheard CHECK (state = 'given-up' OR NOT unheard)
);
CREATE INDEX delivery_by_notice ON alerts.delivery (notice);
CREATE INDEX delivery_due ON alerts.delivery (channel, next) WHERE next IS NOT NULL;
CREATE INDEX delivery_unheard ON alerts.delivery (notice) WHERE unheard;

GRANT SELECT, INSERT ON alerts.notice TO "${app_role}";
GRANT SELECT, INSERT, UPDATE ON alerts.delivery TO "${app_role}";
