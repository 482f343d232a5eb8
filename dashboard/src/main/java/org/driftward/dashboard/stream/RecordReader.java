package org.driftward.dashboard.stream;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
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

  /**
   * @param unreadable is told of each record that is not what its topic promises; the others count
   */
  static Batch read(
      Iterable<ConsumerRecord<String, byte[]>> records,
      Consumer<ConsumerRecord<String, byte[]>> unreadable) {
    var encounters = new ArrayList<Encounter>();
    var carePlans = new ArrayList<CarePlan>();
    var assessments = new ArrayList<Assessment>();
    var snapshots = new ArrayList<Snapshot>();
    var episodes = new ArrayList<EpisodeChange>();
    for (var record : records) {
      // A tombstone of compaction says nothing.
      if (record.value() == null) {
        continue;
      }
      try {
        switch (topic(record.topic())) {
          case ENCOUNTERS -> encounters.add(ENCOUNTER.read(record.value()));
          case CARE_PLANS -> carePlans.add(CARE_PLAN.read(record.value()));
          case ASSESSMENTS -> assessments.add(ASSESSMENT.read(record.value()));
          case SNAPSHOTS -> snapshots.add(SNAPSHOT.read(record.value()));
          case EPISODES -> episodes.add(EPISODE.read(record.value()));
          case INBOX, REJECTED -> throw new IllegalArgumentException("nobody subscribed to it");
        }
      } catch (MalformedException e) {
        unreadable.accept(record);
      }
    }
    return new Batch(encounters, carePlans, assessments, snapshots, episodes);
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
