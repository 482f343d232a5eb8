#!/usr/bin/env bash
# Who may do what with the topics, told to a broker that asks an authorizer
# (org.apache.kafka.metadata.authorizer.StandardAuthorizer) and denies what nobody has allowed
# (allow.everyone.if.no.acl.found=false). Saying it again changes nothing.
#
#   deploy/kubernetes/kafka-acls.sh BOOTSTRAP ADMIN_CONFIG
#
# KAFKA_ACLS is Kafka's own tool; APP, FEEDS and READERS are principals, of the last two any number.
set -euo pipefail
bootstrap=$1 admin=$2
tool=${KAFKA_ACLS:-/opt/kafka/bin/kafka-acls.sh}
app=${APP:-User:driftward}
read -ra feeds <<<"${FEEDS:-User:feeds}"
read -ra readers <<<"${READERS:-}"

allow() {
  "$tool" --bootstrap-server "$bootstrap" --command-config "$admin" --add --force "$@"
}

# The application alone writes the inner topics and makes those that it needs.
allow --allow-principal "$app" --operation All --topic driftward. --resource-pattern-type prefixed
allow --allow-principal "$app" --operation All --group driftward --resource-pattern-type prefixed
allow --allow-principal "$app" --operation All --transactional-id driftward --resource-pattern-type prefixed
allow --allow-principal "$app" --operation IdempotentWrite --operation Describe --cluster

# The internal topics of scoring are named after its application id.
allow --allow-principal "$app" --operation All --topic "${SCORING_ID:-driftward-scoring}" --resource-pattern-type prefixed

# A feed writes the inbox and nothing else, and reads nothing.
for feed in "${feeds[@]}"; do
  allow --allow-principal "$feed" --operation Write --operation Describe --topic driftward.inbox
done

# Other systems read what the house says of its patients.
for reader in ${readers[@]+"${readers[@]}"}; do
  for topic in driftward.snapshots driftward.episodes; do
    allow --allow-principal "$reader" --operation Read --operation Describe --topic "$topic"
  done
  allow --allow-principal "$reader" --operation Read --group "${reader#User:}-" --resource-pattern-type prefixed
done
