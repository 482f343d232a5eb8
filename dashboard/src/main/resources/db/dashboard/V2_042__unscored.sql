-- When an assessment, or its newest revision, came in here, by the database's clock: one that scoring
-- says nothing of is named on the board.
ALTER TABLE dashboard.assessment ADD COLUMN came_at timestamptz NOT NULL DEFAULT now();
CREATE INDEX assessment_came ON dashboard.assessment (encounter, came_at);
