package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import org.driftward.alerts.contract.PatientRecord;
import org.driftward.dashboard.core.WardReader;
import org.driftward.ground.store.Database;
import org.driftward.scoring.contract.Snapshot;

/** Answers from the read model what alerts asks of the record. */
@ApplicationScoped
public class StoredPatientRecord implements PatientRecord {

  private final Database database;
  private final WardReader reader;

  public StoredPatientRecord(Database database, WardReader reader) {
    this.database = database;
    this.reader = reader;
  }

  @Override
  public Optional<Page> find(String encounter) {
    return reader
        .patient(encounter)
        .map(view -> new Page(view.encounter(), view.snapshot(), view.carePlan()));
  }

  @Override
  public Optional<Snapshot> pictureAt(String encounter, Instant time) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT body FROM dashboard.snapshot
                    WHERE encounter = :encounter AND as_of <= :time AND NOT withdrawn
                    ORDER BY as_of DESC, assessment DESC LIMIT 1
                    """)
                .bind("encounter", encounter)
                .bind("time", time)
                .mapTo(String.class)
                .findOne()
                .map(json -> Tables.parse(Tables.SNAPSHOT_JSON, json)));
  }
}
