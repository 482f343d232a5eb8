-- Which processes raise and send alarms, and what is wrong with them: each says so again and again.
-- A page that finds nobody here says that nobody watches.
CREATE TABLE alerts.watch (
  process  text PRIMARY KEY,
  heard_at timestamptz NOT NULL,
  failing  text[] NOT NULL,
  off      text[] NOT NULL
);
GRANT SELECT, INSERT, UPDATE, DELETE ON alerts.watch TO "${app_role}";
