package org.driftward.dashboard.stream;

import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.dashboard.store.Batch;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;

/** Turns the records of the topics into a batch for the read model. Stateless. */
final class RecordReader {

  static final List<Topic> TOPICS =
      List.of(
          Topic.ENCOUNTERS, Topic.CARE_PLANS, Topic.ASSESSMENTS, Topic.SNAPSHOTS, Topic.EPISODES);

  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<CarePlan> CARE_PLAN = JsonFormat.of(CarePlan.class);
  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);
  private static final JsonFormat<EpisodeChange> EPISODE = JsonFormat.of(EpisodeChange.class);

  private RecordReader() {}

  /** A record and what it says. */
  record Legible(ConsumerRecord<String, byte[]> origin, Object says) {}

  /**
   * @throws MalformedException if it is not what its topic promises
   */
  static Legible read(ConsumerRecord<String, byte[]> one) {
    var format =
        switch (topic(one.topic())) {
          case ENCOUNTERS -> ENCOUNTER;
          case CARE_PLANS -> CARE_PLAN;
          case ASSESSMENTS -> ASSESSMENT;
          case SNAPSHOTS -> SNAPSHOT;
          case EPISODES -> EPISODE;
          case INBOX, REJECTED -> throw new IllegalArgumentException("nobody subscribed to it");
        };
    return new Legible(one, format.read(one.value()));
  }

  static Batch batch(List<Legible> records) {
    return new Batch(
        all(records, Encounter.class),
        all(records, CarePlan.class),
        all(records, Assessment.class),
        all(records, Snapshot.class),
        all(records, EpisodeChange.class));
  }

  private static <T> List<T> all(List<Legible> records, Class<T> kind) {
    return records.stream().map(Legible::says).filter(kind::isInstance).map(kind::cast).toList();
  }

  private static Topic topic(String name) {
    for (Topic topic : TOPICS) {
      if (topic.topic().equals(name)) {
        return topic;
      }
    }
    throw new IllegalArgumentException("nobody subscribed to " + name);
  }
}
