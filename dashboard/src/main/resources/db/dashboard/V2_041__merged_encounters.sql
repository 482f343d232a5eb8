-- Two encounters that turn out to be one: what was recorded under the one given up is read under the
-- one that survives. It stays where it was recorded, so that a merge that is undone changes nothing.
ALTER TABLE dashboard.encounter
    ADD COLUMN merged_into text GENERATED ALWAYS AS (body->>'mergedInto') STORED;
CREATE INDEX encounter_merged ON dashboard.encounter (merged_into) WHERE merged_into IS NOT NULL;

-- The encounter and every one that was merged into it, directly or on the way.
CREATE FUNCTION dashboard.one_stay(encounter text) RETURNS SETOF text
LANGUAGE sql STABLE ROWS 1 AS $$
    WITH RECURSIVE stay (encounter) AS (
        SELECT $1
        UNION
        SELECT e.encounter FROM stay s JOIN dashboard.encounter e ON e.merged_into = s.encounter)
    SELECT stay.encounter FROM stay
$$;

-- The encounter in which what was recorded under this one counts. Intake refuses merges in a circle;
-- if there is one all the same, it ends somewhere on it.
CREATE FUNCTION dashboard.survivor(encounter text) RETURNS text
LANGUAGE sql STABLE AS $$
    WITH RECURSIVE way (encounter, step) AS (
        SELECT $1, 0
        UNION ALL
        SELECT e.merged_into, w.step + 1
        FROM way w JOIN dashboard.encounter e ON e.encounter = w.encounter
        WHERE e.merged_into IS NOT NULL AND w.step < 16)
    SELECT way.encounter FROM way ORDER BY way.step DESC LIMIT 1
$$;
