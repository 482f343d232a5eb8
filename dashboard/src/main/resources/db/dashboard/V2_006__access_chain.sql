-- Who looked at which patient becomes a chain of its own, by the arithmetic of the journal. Of its
-- own, because people look far more often than they act, and a look must not wait for an alarm.
-- Rows from before have no place in the chain.
ALTER TABLE dashboard.access
    ADD COLUMN sequence bigint UNIQUE,
    ADD COLUMN previous text,
    ADD COLUMN hash     text;
CREATE INDEX access_by_ward ON dashboard.access (ward, at);

-- The end of that chain. Its lock makes entries take turns, so sequence has no gap.
CREATE TABLE dashboard.access_head (
    one_row  boolean PRIMARY KEY DEFAULT true CHECK (one_row),
    sequence bigint NOT NULL,
    hash     text   NOT NULL
);
INSERT INTO dashboard.access_head (sequence, hash) VALUES (0, repeat('0', 64));

REVOKE UPDATE, DELETE, TRUNCATE ON dashboard.access FROM "${app_role}";
GRANT SELECT, UPDATE ON dashboard.access_head TO "${app_role}";
