#!/usr/bin/env bash
# Runs a tool of Kafka as the administrator: writes its login to a file that only it reads, and adds
# that file where the tool expects it.
#
#   kafka-admin.sh TOOL --bootstrap-server HOST:PORT ...   a tool of Kafka's
#   kafka-admin.sh SCRIPT HOST:PORT                        a script that takes the file itself
set -euo pipefail
umask 077
login=$(mktemp)
trap 'rm -f "$login"' EXIT
cat >"$login" <<END
security.protocol=SASL_PLAINTEXT
sasl.mechanism=PLAIN
sasl.jaas.config=$ADMIN_LOGIN
END
if [[ ${2:-} == --* ]]; then
  "$@" --command-config "$login"
else
  "$@" "$login"
fi
