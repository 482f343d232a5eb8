package org.driftward.scoring.rescore;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.testing.Broker;
import org.jspecify.annotations.Nullable;

/** Writes what scoring reads, and reads what it writes. */
record Log(Broker broker) {

  static final Instant MORNING = Instant.parse("2026-01-05T08:00:00Z");

  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);

  static Instant after(int hours) {
    return MORNING.plus(Duration.ofHours(hours));
  }

  void observed(String id, String encounter, int hour, int pulse) {
    observed(id, 1, Status.FINAL, encounter, hour, pulse);
  }

  void observed(String id, int revision, Status status, String encounter, int hour, int pulse) {
    var assessment =
        new Assessment(
            id,
            revision,
            status,
            encounter,
            "P-1",
            after(hour),
            after(hour),
            Source.BEDSIDE,
            "n-1",
            status == Status.FINAL ? null : "typing error",
            List.of(Finding.quantity("heart-rate", Integer.toString(pulse), "/min")));
    send(Topic.ASSESSMENTS, encounter, JsonFormat.of(Assessment.class).write(assessment));
  }

  void admitted(String encounter, @Nullable String mergedInto) {
    var stay = new Stay("north", "1", MORNING);
    var patient = new Patient("P-1", null, LocalDate.of(1960, 5, 1), null);
    var told = new Encounter(encounter, patient, List.of(stay), MORNING, null, mergedInto, 1);
    send(Topic.ENCOUNTERS, encounter, JsonFormat.of(Encounter.class).write(told));
  }

  void signed(String encounter, long version, int fromHour) {
    var plan =
        new CarePlan(
            encounter,
            version,
            1,
            List.of(),
            Duration.ofHours(2),
            null,
            null,
            "agreed",
            "doctor",
            after(fromHour),
            after(fromHour + 48));
    send(Topic.CARE_PLANS, encounter, JsonFormat.of(CarePlan.class).write(plan));
  }

  void send(Topic topic, String key, byte[] value) {
    broker.send(List.of(new ProducerRecord<>(topic.topic(), key, value)));
  }

  /** Every committed snapshot, oldest first in its partition. */
  List<Snapshot> snapshots() {
    return broker.read(Topic.SNAPSHOTS).stream()
        .map(received -> SNAPSHOT.read(received.value()))
        .toList();
  }
}
