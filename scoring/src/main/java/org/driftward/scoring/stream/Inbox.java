package org.driftward.scoring.stream;

import java.time.Instant;
import java.util.Map;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Outcome;
import org.driftward.scoring.stream.state.Histories;
import org.jspecify.annotations.Nullable;

/** Reads the records of each topic that scoring listens to. */
final class Inbox {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<CarePlan> CARE_PLAN = JsonFormat.of(CarePlan.class);

  private final Map<String, Reader> readers;

  /** What a record asks of the history of its encounter. */
  @FunctionalInterface
  interface Request {
    Outcome take(Histories histories, @Nullable Instant acceptedAt);
  }

  @FunctionalInterface
  private interface Reader {
    Request read(String key, byte[] value);
  }

  Inbox(MoveCode moves) {
    this.readers =
        Map.of(
            Topic.ASSESSMENTS.topic(),
            Inbox::assessment,
            Topic.ENCOUNTERS.topic(),
            Inbox::encounter,
            Topic.CARE_PLANS.topic(),
            Inbox::carePlan,
            ScoringTopology.MOVES_TOPIC,
            (key, value) -> move(moves, key, value));
  }

  /**
   * @throws RuntimeException if the record is not what its topic is for
   */
  Request read(String topic, String key, byte[] value) {
    var reader = readers.get(topic);
    if (reader == null) {
      throw new IllegalArgumentException("nothing is read from " + topic);
    }
    return reader.read(key, value);
  }

  private static Request assessment(String key, byte[] value) {
    var assessment = ASSESSMENT.read(value);
    requireKey(key, assessment.encounter());
    var entry = Entry.of(assessment);
    return (histories, acceptedAt) -> histories.take(key, entry, acceptedAt);
  }

  private static Request encounter(String key, byte[] value) {
    var encounter = ENCOUNTER.read(value);
    requireKey(key, encounter.id());
    return (histories, acceptedAt) -> histories.take(encounter, acceptedAt);
  }

  private static Request carePlan(String key, byte[] value) {
    var plan = CARE_PLAN.read(value);
    requireKey(key, plan.encounter());
    return (histories, acceptedAt) -> histories.take(plan, acceptedAt);
  }

  private static Request move(MoveCode moves, String key, byte[] value) {
    var move = moves.read(key, value);
    return (histories, acceptedAt) ->
        move.arrives()
            ? histories.take(key, move.entry(), acceptedAt)
            : histories.release(key, move.entry(), acceptedAt);
  }

  private static void requireKey(String key, String encounter) {
    if (!key.equals(encounter)) {
      throw new Quarantine.WrongKeyException();
    }
  }
}
