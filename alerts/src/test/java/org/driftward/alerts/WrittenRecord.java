package org.driftward.alerts;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.driftward.alerts.contract.PatientRecord;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;

/** The record of patients as a test wrote it; the real one is the dashboard's read model. */
public class WrittenRecord implements PatientRecord {

  private final Map<String, Encounter> encounters = new ConcurrentHashMap<>();
  private final List<Snapshot> pictures = new CopyOnWriteArrayList<>();

  public void add(Encounter encounter) {
    encounters.put(encounter.id(), encounter);
  }

  public void add(Snapshot picture) {
    pictures.add(picture);
  }

  @Override
  public Optional<Page> find(String encounter) {
    return Optional.ofNullable(encounters.get(encounter))
        .map(known -> new Page(known, pictureAt(encounter, Instant.MAX).orElse(null), null));
  }

  @Override
  public Optional<Snapshot> pictureAt(String encounter, Instant time) {
    return pictures.stream()
        .filter(picture -> picture.encounter().equals(encounter) && !picture.asOf().isAfter(time))
        .max(Comparator.comparing(Snapshot::asOf));
  }
}
