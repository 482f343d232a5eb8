package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.core.audit.EventLines;
import org.driftward.alerts.core.audit.Evidence.Suppressed;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Reads what measures rest on out of the journal and the care plans. Thread-safe. */
@Singleton
public class AuditRecord {

  private static final Json<AuditEvent> EVENT = new Json<>(JsonFormat.of(AuditEvent.class));
  private static final Json<Quiet> QUIET = new Json<>(JsonFormat.of(Quiet.class));

  private final Database database;

  public AuditRecord(Database database) {
    this.database = database;
  }

  /** The body of an entry about a trigger that was kept quiet. */
  record Quiet(String ward, String rule, Level level) {}

  /**
   * Whole episodes that changed in the stretch, in the order of the journal.
   *
   * @param wards only those that were on one of these then, or null for all
   */
  List<EpisodeChange> changes(@Nullable Set<String> wards, Instant from, Instant to) {
    var all =
        database.read(
            handle ->
                handle
                    .createQuery(
                        """
                        SELECT sequence, at, subject, kind, by, body, previous, hash
                        FROM alerts.journal WHERE subject IN (
                          SELECT DISTINCT subject FROM alerts.journal
                          WHERE at >= :from AND at < :to AND subject LIKE 'episode/%')
                        ORDER BY sequence
                        """)
                    .bind("from", from)
                    .bind("to", to)
                    .map(JournalTable::entry)
                    .map(JournalTable::change)
                    .list());
    return all.stream()
        .filter(change -> wards == null || wards.contains(change.episode().ward()))
        .toList();
  }

  List<Suppressed> suppressed(@Nullable Set<String> wards, Instant from, Instant to) {
    return database
        .read(
            handle ->
                handle
                    .createQuery(
                        """
                        SELECT at, subject, body FROM alerts.journal
                        WHERE at >= :from AND at < :to AND kind = 'suppressed' ORDER BY sequence
                        """)
                    .bind("from", from)
                    .bind("to", to)
                    .map((row, context) -> suppressed(row))
                    .list())
        .stream()
        .filter(quiet -> wards == null || wards.contains(quiet.ward()))
        .toList();
  }

  private static Suppressed suppressed(ResultSet row) throws SQLException {
    var quiet = QUIET.read(row.getString("body"));
    var subject = row.getString("subject");
    return new Suppressed(
        subject.substring(subject.indexOf('/') + 1),
        quiet.ward(),
        row.getObject("at", OffsetDateTime.class).toInstant(),
        quiet.rule(),
        quiet.level());
  }

  /** Every version of these patients' care plans. */
  List<CarePlan> plans(Set<String> encounters) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM alerts.care_plan WHERE encounter = ANY (:encounters)"
                        + " ORDER BY encounter, version")
                .bindArray("encounters", String.class, encounters)
                .mapTo(String.class)
                .map(Json.CARE_PLAN::read)
                .list());
  }

  /** Entered events that were not withdrawn, oldest first. There are few. */
  List<AuditEvent> events(@Nullable Set<String> wards, Instant from, Instant to) {
    Map<String, AuditEvent> events = new LinkedHashMap<>();
    for (var written : written()) {
      if (written.kind().equals(EventLines.RECORDED)) {
        events.put(written.subject(), EVENT.read(written.body()));
      } else {
        events.remove(written.subject());
      }
    }
    var asked = new ArrayList<AuditEvent>();
    for (var event : events.values()) {
      boolean here = wards == null || wards.contains(event.ward());
      if (here && !event.at().isBefore(from) && event.at().isBefore(to)) {
        asked.add(event);
      }
    }
    asked.sort((one, other) -> one.at().compareTo(other.at()));
    return asked;
  }

  private record Written(String subject, String kind, String body) {}

  private List<Written> written() {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT subject, kind, body FROM alerts.journal
                    WHERE subject LIKE 'audit-event/%' ORDER BY sequence
                    """)
                .map(
                    (row, context) ->
                        new Written(
                            row.getString("subject"), row.getString("kind"), row.getString("body")))
                .list());
  }
}
