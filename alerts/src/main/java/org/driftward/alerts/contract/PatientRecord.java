package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What the record says of a patient, for texts and lists that are filled in from it. Alerts asks;
 * whoever keeps the read model answers. It may lag behind by moments. Thread-safe, blocking.
 */
public interface PatientRecord {

  /**
   * @param newest the newest clinical picture, or null before the first
   * @param carePlan the newest, in force or not, or null where none was ever signed
   */
  record Page(Encounter encounter, @Nullable Snapshot newest, @Nullable CarePlan carePlan) {
    public Page {
      Objects.requireNonNull(encounter, "encounter");
    }

    @Override
    public String toString() {
      return "Page[" + encounter.id() + "]";
    }
  }

  Optional<Page> find(String encounter);

  /** The newest picture whose clinical time is not after {@code time}. */
  Optional<Snapshot> pictureAt(String encounter, Instant time);
}
