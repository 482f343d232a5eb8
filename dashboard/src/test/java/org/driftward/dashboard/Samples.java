package org.driftward.dashboard;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Patient.Sex;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** Invented patients for tests. Every time is given in minutes after {@link #START}. */
public final class Samples {

  public static final Instant START = Instant.parse("2026-01-05T03:00:00Z");

  private Samples() {}

  public static Instant at(int minutes) {
    return START.plus(Duration.ofMinutes(minutes));
  }

  public static Encounter encounter(String id, String ward, @Nullable String bed, long version) {
    return new Encounter(
        id,
        new Patient("P-" + id, "Sample, " + id, LocalDate.of(1950, 2, 3), Sex.FEMALE),
        List.of(new Stay(ward, bed, START)),
        START,
        null,
        null,
        version);
  }

  public static Encounter discharged(String id, String ward, long version) {
    var present = encounter(id, ward, "1", version);
    return new Encounter(id, present.patient(), present.stays(), START, at(600), null, version);
  }

  /** Given up for another number of the same stay. */
  public static Encounter merged(String id, String ward, String into, long version) {
    var alone = encounter(id, ward, "1", version);
    return new Encounter(id, alone.patient(), alone.stays(), START, null, into, version);
  }

  public static Assessment assessment(String encounter, String id, int revision, int minute) {
    return new Assessment(
        id,
        revision,
        revision == 1 ? Assessment.Status.FINAL : Assessment.Status.AMENDED,
        encounter,
        "P-" + encounter,
        at(minute),
        at(minute + 1),
        Assessment.Source.BEDSIDE,
        "nurse",
        null,
        List.of(Finding.quantity("heart-rate", Integer.toString(80 + revision), "/min")));
  }

  public static Assessment retracted(String encounter, String id, int revision, int minute) {
    return new Assessment(
        id,
        revision,
        Assessment.Status.RETRACTED,
        encounter,
        "P-" + encounter,
        at(minute),
        at(minute + 1),
        Assessment.Source.BEDSIDE,
        "nurse",
        "wrong patient",
        List.of());
  }

  public static Score score(int low, int high) {
    boolean complete = low == high;
    return new Score(
        "news2",
        "NEWS2",
        "2017",
        BigDecimal.valueOf(low),
        BigDecimal.valueOf(high),
        complete,
        "low",
        "low",
        0,
        null,
        complete ? List.of() : List.of("temperature"),
        List.of());
  }

  /** A snapshot of assessment {@code id}, the newest picture, the next set due an hour later. */
  public static Snapshot snapshot(
      String encounter, String id, long sequence, int minute, int low, int high) {
    return snapshot(encounter, id, sequence, minute, low, high, true);
  }

  public static Snapshot snapshot(
      String encounter, String id, long sequence, int minute, int low, int high, boolean latest) {
    return new Snapshot(
        encounter,
        at(minute),
        id,
        sequence,
        latest,
        false,
        "policy-1",
        0,
        List.of(score(low, high)),
        List.of(),
        List.of(),
        List.of(),
        at(minute),
        List.of(),
        at(minute + 60),
        Duration.ofHours(1),
        "every hour",
        at(minute + 1));
  }

  public static Snapshot withdrawn(String encounter, String id, long sequence, int minute) {
    return new Snapshot(
        encounter,
        at(minute),
        id,
        sequence,
        false,
        true,
        "policy-1",
        0,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        null,
        null,
        null,
        at(minute + 1));
  }

  public static CarePlan plan(String encounter, long version, String ceiling) {
    return new CarePlan(
        encounter,
        version,
        2,
        List.of(),
        null,
        ceiling,
        new CarePlan.Hold("procedure", at(30)),
        "prescribed",
        "doctor",
        START,
        at(720));
  }

  public static Episode episode(
      String id, String encounter, long version, EpisodeState state, Level level, int due) {
    boolean over = state == EpisodeState.CLOSED;
    boolean open = state == EpisodeState.OPEN;
    return new Episode(
        id,
        version,
        encounter,
        "W1",
        "1",
        state,
        level,
        open ? null : "charge",
        open ? null : "Charge Nurse",
        at(1),
        over ? null : at(due),
        over ? null : open ? Awaiting.ACKNOWLEDGEMENT : Awaiting.ATTENDANCE,
        0,
        "bedside nurse",
        List.of(new Reason("score-high", level, "the score is high", at(1))),
        null,
        null,
        over ? at(due) : null,
        over ? "recovered" : null);
  }

  public static EpisodeChange change(long sequence, String kind, Episode episode) {
    return new EpisodeChange(sequence, at((int) sequence), kind, "driftward", null, null, episode);
  }
}
