package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.CareHistory;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** {@link CareHistory} out of the read model. Bodies stay in the database where columns do. */
@ApplicationScoped
public class StoredCareHistory implements CareHistory {

  private final Database database;

  public StoredCareHistory(Database database) {
    this.database = database;
  }

  @Override
  public List<Stay> stays(@Nullable Set<String> wards, Instant from, Instant to) {
    var stays = new ArrayList<Stay>();
    var encounters =
        database.read(
            handle ->
                handle
                    .createQuery("SELECT body FROM dashboard.encounter")
                    .mapTo(String.class)
                    .map(json -> Tables.parse(Tables.ENCOUNTER_JSON, json))
                    .list());
    for (var encounter : encounters) {
      for (var stay : of(encounter)) {
        boolean here = wards == null || wards.contains(stay.ward());
        boolean then =
            stay.from().isBefore(to) && (stay.until() == null || stay.until().isAfter(from));
        if (here && then) {
          stays.add(stay);
        }
      }
    }
    stays.sort(Comparator.comparing(Stay::from).thenComparing(Stay::encounter));
    return stays;
  }

  /** Neighbouring beds of one ward are one stay. One merged away has never been. */
  static List<Stay> of(Encounter encounter) {
    if (encounter.mergedInto() != null) {
      return List.of();
    }
    var stays = new ArrayList<Stay>();
    var beds = encounter.stays();
    int first = 0;
    for (int i = 1; i <= beds.size(); i++) {
      boolean last = i == beds.size();
      if (last || !beds.get(i).ward().equals(beds.get(first).ward())) {
        stays.add(
            new Stay(
                encounter.id(),
                encounter.patient().id(),
                beds.get(first).ward(),
                first == 0 ? encounter.admitted() : beds.get(first).from(),
                last ? encounter.discharged() : beds.get(i).from(),
                first == 0,
                last && encounter.discharged() != null));
        first = i;
      }
    }
    return stays;
  }

  @Override
  public List<ObservedSet> sets(Set<String> encounters, Instant from, Instant to) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT encounter, assessment, as_of, low,
                           body->'scores'->0->>'id' AS leading,
                           coalesce((body->'scores'->0->>'single')::int, 0) AS single,
                           jsonb_array_length(body->'partial') = 0 AS core,
                           coalesce((body->'scores'->0->>'complete')::boolean, false) AS scored,
                           (body->>'nextDue')::timestamptz AS due, body->>'interval' AS interval
                    FROM dashboard.snapshot
                    WHERE encounter = ANY(:encounters) AND as_of >= :from AND as_of < :to
                      AND NOT withdrawn AND (body->>'lastSet')::timestamptz = as_of
                    ORDER BY as_of, encounter, assessment
                    """)
                .bindArray("encounters", String.class, encounters.toArray())
                .bind("from", from)
                .bind("to", to)
                .map((row, context) -> set(row))
                .list());
  }

  private static ObservedSet set(ResultSet row) throws SQLException {
    var interval = row.getString("interval");
    var due = row.getObject("due", OffsetDateTime.class);
    return new ObservedSet(
        row.getString("encounter"),
        row.getString("assessment"),
        row.getObject("as_of", OffsetDateTime.class).toInstant(),
        row.getString("leading"),
        row.getBigDecimal("low"),
        row.getInt("single"),
        row.getBoolean("core"),
        row.getBoolean("scored"),
        due == null ? null : due.toInstant(),
        interval == null ? null : Duration.parse(interval));
  }

  @Override
  public List<Snapshot> snapshots(String encounter, Instant from, Instant to) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT body FROM dashboard.snapshot
                    WHERE encounter = :encounter AND as_of >= :from AND as_of < :to
                      AND NOT withdrawn ORDER BY as_of, assessment
                    """)
                .bind("encounter", encounter)
                .bind("from", from)
                .bind("to", to)
                .mapTo(String.class)
                .map(json -> Tables.parse(Tables.SNAPSHOT_JSON, json))
                .list());
  }
}
