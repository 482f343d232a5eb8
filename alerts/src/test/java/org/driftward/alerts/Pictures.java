package org.driftward.alerts;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.contract.UrgentFinding;
import org.jspecify.annotations.Nullable;

/** Builds snapshots for tests: complete, newest, on a four-hour interval, unless told otherwise. */
public final class Pictures {

  private final String encounter;
  private final Instant asOf;
  private long sequence = 1;
  private boolean latest = true;
  private boolean withdrawn;
  private String leading = "news2";
  private int low;
  private int high;
  private @Nullable BigDecimal usual;
  private final List<String> missing = new ArrayList<>();
  private final List<ScoredInput> inputs = new ArrayList<>();
  private final List<Drift> drift = new ArrayList<>();
  private final List<Trend> trend = new ArrayList<>();
  private final List<ChangedFinding> changed = new ArrayList<>();
  private final List<UrgentFinding> urgent = new ArrayList<>();
  private final List<String> partial = new ArrayList<>();
  private @Nullable Instant lastSet;
  private Duration interval = Duration.ofHours(4);

  private Pictures(String encounter, Instant asOf) {
    this.encounter = encounter;
    this.asOf = asOf;
    this.lastSet = asOf;
  }

  public static Pictures of(String encounter, Instant asOf) {
    return new Pictures(encounter, asOf);
  }

  public Pictures sequence(long number) {
    sequence = number;
    return this;
  }

  public Pictures late() {
    latest = false;
    return this;
  }

  public Pictures withdrawn() {
    latest = false;
    withdrawn = true;
    return this;
  }

  public Pictures score(int total) {
    low = total;
    high = total;
    return this;
  }

  public Pictures score(int from, int to, String... without) {
    low = from;
    high = to;
    missing.addAll(List.of(without));
    return this;
  }

  /** Another score than NEWS2 leads. */
  public Pictures by(String id) {
    leading = id;
    return this;
  }

  public Pictures urgent(String code, Level level, double beyond) {
    return urgent(code, level, beyond, asOf);
  }

  public Pictures urgent(String code, Level level, double beyond, Instant takenAt) {
    urgent.add(
        new UrgentFinding(
            code,
            null,
            null,
            Scalar.of("value"),
            null,
            takenAt,
            level,
            beyond,
            "urgent " + code,
            "local policy"));
    return this;
  }

  public Pictures usual(String level) {
    usual = new BigDecimal(level);
    return this;
  }

  public Pictures input(String code, String value, @Nullable String unit, int points) {
    inputs.add(
        new ScoredInput(
            code,
            Scalar.of(new BigDecimal(value)),
            unit,
            asOf,
            points,
            "band",
            "row",
            "table",
            null));
    return this;
  }

  public Pictures word(String code, String value, int points) {
    inputs.add(
        new ScoredInput(code, Scalar.of(value), null, asOf, points, "band", "row", "table", null));
    return this;
  }

  /** A spot check of somebody of whom no set was ever taken. */
  public Pictures unscheduled() {
    lastSet = null;
    return this;
  }

  public Pictures drift(Drift one) {
    drift.add(one);
    return this;
  }

  public Pictures trend(Trend one) {
    trend.add(one);
    return this;
  }

  public Pictures changed(ChangedFinding one) {
    changed.add(one);
    return this;
  }

  public Pictures partial(String... codes) {
    partial.addAll(List.of(codes));
    return this;
  }

  public Pictures lastSet(Instant time) {
    lastSet = time;
    return this;
  }

  public Pictures interval(Duration length) {
    interval = length;
    return this;
  }

  public Snapshot build() {
    var score =
        new Score(
            leading,
            leading.toUpperCase(Locale.ROOT),
            "1",
            BigDecimal.valueOf(low),
            BigDecimal.valueOf(high),
            missing.isEmpty(),
            "risk",
            "risk",
            inputs.stream().mapToInt(ScoredInput::points).max().orElse(0),
            usual,
            missing,
            inputs);
    return new Snapshot(
        encounter,
        asOf,
        "A-" + asOf.toEpochMilli(),
        sequence,
        latest,
        withdrawn,
        "test",
        0,
        withdrawn ? List.of() : List.of(score),
        drift,
        trend,
        changed,
        urgent,
        lastSet,
        partial,
        lastSet == null ? null : lastSet.plus(interval),
        lastSet == null ? null : interval,
        "by score",
        null);
  }
}
