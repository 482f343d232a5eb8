package org.driftward.dashboard.store;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;

/** The tables of the read model. */
final class Tables {

  static final JsonFormat<Encounter> ENCOUNTER_JSON = JsonFormat.of(Encounter.class);
  static final JsonFormat<CarePlan> CARE_PLAN_JSON = JsonFormat.of(CarePlan.class);
  static final JsonFormat<Assessment> ASSESSMENT_JSON = JsonFormat.of(Assessment.class);
  static final JsonFormat<Snapshot> SNAPSHOT_JSON = JsonFormat.of(Snapshot.class);
  static final JsonFormat<Episode> EPISODE_JSON = JsonFormat.of(Episode.class);
  static final JsonFormat<EpisodeChange> EPISODE_CHANGE_JSON = JsonFormat.of(EpisodeChange.class);

  static final Table<Encounter> ENCOUNTER =
      new Table<>(
          """
          INSERT INTO dashboard.encounter AS kept (encounter, version, ward, present, body)
          VALUES (:encounter, :version, :ward, :present, :body::jsonb)
          ON CONFLICT (encounter) DO UPDATE SET
            version = excluded.version, ward = excluded.ward, present = excluded.present,
            body = excluded.body
          WHERE excluded.version > kept.version
          """,
          Comparator.comparing(Encounter::id).thenComparing(Encounter::version),
          (row, encounter) ->
              row.bind("encounter", encounter.id())
                  .bind("version", encounter.version())
                  .bind("ward", encounter.ward())
                  .bind("present", encounter.present())
                  .bind("body", text(ENCOUNTER_JSON, encounter)));

  static final Table<CarePlan> CARE_PLAN =
      new Table<>(
          """
          INSERT INTO dashboard.care_plan AS kept (encounter, version, body)
          VALUES (:encounter, :version, :body::jsonb)
          ON CONFLICT (encounter) DO UPDATE SET version = excluded.version, body = excluded.body
          WHERE excluded.version > kept.version
          """,
          Comparator.comparing(CarePlan::encounter).thenComparing(CarePlan::version),
          (row, plan) ->
              row.bind("encounter", plan.encounter())
                  .bind("version", plan.version())
                  .bind("body", text(CARE_PLAN_JSON, plan)));

  static final Table<Assessment> ASSESSMENT =
      new Table<>(
          """
          INSERT INTO dashboard.assessment AS kept
            (encounter, assessment, revision, taken_at, body)
          VALUES (:encounter, :assessment, :revision, :takenAt, :body::jsonb)
          ON CONFLICT (encounter, assessment) DO UPDATE SET
            revision = excluded.revision, taken_at = excluded.taken_at, body = excluded.body,
            came_at = now()
          WHERE excluded.revision > kept.revision
          """,
          Comparator.comparing(Assessment::encounter)
              .thenComparing(Assessment::id)
              .thenComparing(Assessment::revision),
          (row, assessment) ->
              row.bind("encounter", assessment.encounter())
                  .bind("assessment", assessment.id())
                  .bind("revision", assessment.revision())
                  .bind("takenAt", assessment.takenAt())
                  .bind("body", text(ASSESSMENT_JSON, assessment)));

  static final Table<Snapshot> SNAPSHOT =
      new Table<>(
          """
          INSERT INTO dashboard.snapshot AS kept
            (encounter, assessment, sequence, as_of, latest, withdrawn, score, low, high, body)
          VALUES (:encounter, :assessment, :sequence, :asOf, :latest, :withdrawn, :score, :low,
            :high, :body::jsonb)
          ON CONFLICT (encounter, assessment) DO UPDATE SET
            sequence = excluded.sequence, as_of = excluded.as_of, latest = excluded.latest,
            withdrawn = excluded.withdrawn, score = excluded.score, low = excluded.low,
            high = excluded.high, body = excluded.body
          WHERE excluded.sequence > kept.sequence
          """,
          Comparator.comparing(Snapshot::encounter)
              .thenComparing(Snapshot::assessment)
              .thenComparing(Snapshot::sequence),
          (row, snapshot) -> {
            var score = snapshot.leading();
            row.bind("encounter", snapshot.encounter())
                .bind("assessment", snapshot.assessment())
                .bind("sequence", snapshot.sequence())
                .bind("asOf", snapshot.asOf())
                .bind("latest", snapshot.latest())
                .bind("withdrawn", snapshot.withdrawn())
                .bind("score", score == null ? null : score.id())
                .bind("low", score == null ? null : score.low())
                .bind("high", score == null ? null : score.high())
                .bind("body", text(SNAPSHOT_JSON, snapshot));
          });

  static final Table<Episode> EPISODE =
      new Table<>(
          """
          INSERT INTO dashboard.episode AS kept
            (episode, encounter, version, running, opened_at, body)
          VALUES (:episode, :encounter, :version, :running, :openedAt, :body::jsonb)
          ON CONFLICT (episode) DO UPDATE SET
            encounter = excluded.encounter, version = excluded.version,
            running = excluded.running, opened_at = excluded.opened_at, body = excluded.body
          WHERE excluded.version > kept.version
          """,
          Comparator.comparing(Episode::id).thenComparing(Episode::version),
          (row, episode) ->
              row.bind("episode", episode.id())
                  .bind("encounter", episode.encounter())
                  .bind("version", episode.version())
                  .bind("running", !episode.isOver())
                  .bind("openedAt", episode.openedAt())
                  .bind("body", text(EPISODE_JSON, episode)));

  static final Table<EpisodeChange> EPISODE_CHANGE =
      new Table<>(
          """
          INSERT INTO dashboard.episode_change (sequence, episode, body)
          VALUES (:sequence, :episode, :body::jsonb)
          ON CONFLICT (sequence) DO NOTHING
          """,
          Comparator.comparing(EpisodeChange::sequence),
          (row, change) ->
              row.bind("sequence", change.sequence())
                  .bind("episode", change.episode().id())
                  .bind("body", text(EPISODE_CHANGE_JSON, change)));

  private Tables() {}

  private static <T> String text(JsonFormat<T> format, T value) {
    return new String(format.write(value), StandardCharsets.UTF_8);
  }

  static <T> T parse(JsonFormat<T> format, String json) {
    return format.read(json.getBytes(StandardCharsets.UTF_8));
  }
}
