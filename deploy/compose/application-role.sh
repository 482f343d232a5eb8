#!/usr/bin/env bash
# Runs once, when the database is made: the role the application connects as. It may use the tables
# that the owner makes; the owner grants that with each table.
set -euo pipefail
psql --set=ON_ERROR_STOP=1 --set=password="$APP_PASSWORD" \
  --username="$POSTGRES_USER" --dbname="$POSTGRES_DB" <<'SQL'
CREATE ROLE driftward LOGIN PASSWORD :'password';
REVOKE ALL ON DATABASE driftward FROM PUBLIC;
GRANT CONNECT ON DATABASE driftward TO driftward;
SQL
