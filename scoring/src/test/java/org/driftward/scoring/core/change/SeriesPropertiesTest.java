package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.Course.START;
import static org.driftward.scoring.core.change.TestCatalogue.expected;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.policy.TrendRule;
import org.driftward.scoring.policy.PolicyFile;
import org.hipparchus.stat.descriptive.rank.Median;

/** What must hold for any course of any series. The courses may be bursts, gaps and leaps. */
class SeriesPropertiesTest {

  private static final long SPACING = PolicyFile.shipped().spacing().toMillis();
  private static final long REACH = PolicyFile.shipped().trend().window().toMillis();

  private final ChangeDetector detector =
      new ChangeDetector(
          TestCatalogue.shippedAnd(
              expected("test-mmhg", "mm[Hg]", "90", "140", Worse.EITHER, "6"),
              // The same in kilopascal, for the sake of simple arithmetic at 8 mmHg to 1 kPa.
              expected("test-kpa", "kPa", "11.25", "17.5", Worse.EITHER, "0.75"),
              // The same upside down.
              expected("test-minus", "mm[Hg]", "-140", "-90", Worse.EITHER, "6")),
          mentioningEveryTrend(PolicyFile.shipped()));

  /** A value after a pause. */
  record Step(long millis, int value) {}

  @Provide
  Arbitrary<List<Step>> courses() {
    var pause =
        Arbitraries.frequencyOf(
            Tuple.of(20, Arbitraries.longs().between(1, 4 * 60).map(m -> m * 60_000)),
            Tuple.of(5, Arbitraries.longs().between(0, 2 * SPACING)),
            Tuple.of(1, Arbitraries.longs().between(0, 2 * REACH)));
    var level = Arbitraries.integers().between(60, 180);
    return Combinators.combine(pause, level).as(Step::new).list().ofMinSize(1).ofMaxSize(60);
  }

  @Property
  void shouldMeasureTheSameDriftInAnyUnit(@ForAll("courses") List<Step> course) {
    var mmHg = drifts("test-mmhg", "mm[Hg]", course, "1");
    var kPa = drifts("test-kpa", "kPa", course, "0.125");

    for (int i = 0; i < course.size(); i++) {
      assertThat(kPa.get(i).isPresent()).isEqualTo(mmHg.get(i).isPresent());
      if (kPa.get(i).isPresent()) {
        var a = mmHg.get(i).orElseThrow();
        var b = kPa.get(i).orElseThrow();
        assertThat(b.drift()).isCloseTo(a.drift(), within(1e-9));
        assertThat(b.accumulated()).isCloseTo(a.accumulated(), within(1e-9));
        assertThat(b.worse()).isEqualTo(a.worse());
      }
    }
  }

  @Property
  void shouldTurnTheTrendRoundWithTheSign(@ForAll("courses") List<Step> course) {
    var up = trends("test-mmhg", course, "1");
    var down = trends("test-minus", course, "-1");

    for (int i = 0; i < course.size(); i++) {
      assertThat(down.get(i).isPresent()).isEqualTo(up.get(i).isPresent());
      if (up.get(i).isPresent()) {
        var a = up.get(i).orElseThrow();
        var b = down.get(i).orElseThrow();
        assertThat(b.perHour()).isCloseTo(-a.perHour(), within(1e-9));
        assertThat(b.s()).isEqualTo(-a.s());
        assertThat(b.pValue()).isEqualTo(a.pValue());
        assertThat(b.significant()).isEqualTo(a.significant());
        assertThat(b.projectedCrossing()).isEqualTo(a.projectedCrossing());
        assertThat(b.earliest()).isEqualTo(a.earliest());
        assertThat(b.latest()).isEqualTo(a.latest());
      }
    }
  }

  /** The window kept step by step is the one picked from the whole history at once. */
  @Property
  void shouldKeepTheWindowThatTheWholeHistoryGives(@ForAll("courses") List<Step> course) {
    var readings = readings("test-mmhg", "mm[Hg]", course, "1");
    var state = SeriesState.empty();

    for (int i = 0; i < readings.size(); i++) {
      state = detector.series(readings.get(i)).advance(state, readings.get(i));

      var whole = windowOf(readings.subList(0, i + 1));
      assertThat(times(state)).isEqualTo(whole.stream().map(Reading::takenAt).toList());
    }
  }

  /**
   * An S of 1 or less has a p of 1. Slope and S at every step against their textbook definitions
   * and Hipparchus' median.
   */
  @Property
  void shouldGiveTheTrendOfTheWholeHistory(@ForAll("courses") List<Step> course) {
    var readings = readings("test-mmhg", "mm[Hg]", course, "1");
    var state = SeriesState.empty();

    for (int i = 0; i < readings.size(); i++) {
      state = detector.series(readings.get(i)).advance(state, readings.get(i));
      var trend = detector.series(readings.get(i)).trend(state, readings.get(i), up -> null);

      var window = windowOf(readings.subList(0, i + 1));
      assertThat(trend.isPresent()).isEqualTo(window.size() >= 5 && Math.abs(kendall(window)) > 1);
      if (trend.isPresent()) {
        double slope = medianSlope(window);
        assertThat(trend.get().s()).isEqualTo(kendall(window));
        assertThat(trend.get().perHour()).isCloseTo(slope, within(1e-9 * (1 + Math.abs(slope))));
      }
    }
  }

  @Property
  void shouldMakeNoDifferenceWhetherTheStateWasKeptAsBytes(
      @ForAll("courses") List<Step> course, @ForAll @IntRange(min = 1, max = 7) int every) {
    var kept = SeriesState.empty();
    var stored = SeriesState.empty();
    var readings = readings("test-mmhg", "mm[Hg]", course, "1");

    for (int i = 0; i < readings.size(); i++) {
      kept = detector.series(readings.get(i)).advance(kept, readings.get(i));
      stored = detector.series(readings.get(i)).advance(stored, readings.get(i));
      if (i % every == 0) {
        stored = SeriesState.decode(stored.encode());
      }
    }

    assertThat(stored).isEqualTo(kept);
    assertThat(stored.hashCode()).isEqualTo(kept.hashCode());
  }

  /** Bounded memory, whatever comes: times to the millisecond and thirds for values included. */
  @Property
  void shouldStaySmall(@ForAll("courses") List<Step> course) {
    var whole = SeriesState.empty();
    for (var reading : readings("test-mmhg", "mm[Hg]", course, "1")) {
      whole = detector.series(reading).advance(whole, reading);
    }

    assertThat(whole.encode().length).isLessThan(200);
    assertThat(whole.window().size()).isLessThanOrEqualTo(16);
  }

  @Property
  void shouldRefuseBytesThatAreCutShort(
      @ForAll("courses") List<Step> course, @ForAll @IntRange(min = 0, max = 9999) int share) {
    var state = SeriesState.empty();
    for (var reading : readings("test-mmhg", "mm[Hg]", course, "1")) {
      state = detector.series(reading).advance(state, reading);
    }
    var bytes = state.encode();
    int cut = bytes.length * share / 10_000;

    assertThatThrownBy(() -> SeriesState.decode(Arrays.copyOf(bytes, cut)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** The first and the newest of a burst, in reach, and of those the newest sixteen. */
  private static List<Reading> windowOf(List<Reading> history) {
    var kept = new ArrayList<Reading>();
    for (var reading : history) {
      int last = kept.size() - 1;
      boolean moment = last >= 0 && kept.get(last).takenAt().equals(reading.takenAt());
      boolean burst = last > 0 && millis(kept.get(last)) - millis(kept.get(last - 1)) < SPACING;
      if (moment || burst) {
        kept.remove(last);
      }
      kept.add(reading);
      kept.removeIf(earlier -> millis(earlier) < millis(reading) - REACH);
    }
    return kept.subList(Math.max(0, kept.size() - 16), kept.size());
  }

  private List<Optional<Drift>> drifts(String code, String unit, List<Step> course, String factor) {
    var drifts = new ArrayList<Optional<Drift>>();
    var state = SeriesState.empty();
    for (var reading : readings(code, unit, course, factor)) {
      state = detector.series(reading).advance(state, reading);
      drifts.add(detector.series(reading).drift(state, reading));
    }
    return drifts;
  }

  private List<Optional<Trend>> trends(String code, List<Step> course, String factor) {
    var trends = new ArrayList<Optional<Trend>>();
    var state = SeriesState.empty();
    boolean upright = !factor.startsWith("-");
    for (var reading : readings(code, "mm[Hg]", course, factor)) {
      state = detector.series(reading).advance(state, reading);
      double up = level(reading) + 20;
      double down = level(reading) - 15;
      trends.add(
          upright
              ? detector.series(reading).trend(state, reading, above -> above ? up : down)
              : detector
                  .series(reading)
                  .trend(state, reading, above -> above ? down + 30 : up - 40));
    }
    return trends;
  }

  private static List<Reading> readings(
      String code, String unit, List<Step> course, String factor) {
    var readings = new ArrayList<Reading>();
    var time = START;
    for (var step : course) {
      time = time.plusMillis(step.millis());
      var value = new BigDecimal(step.value()).multiply(new BigDecimal(factor));
      readings.add(
          new Reading(
              FindingKey.of(code), new Quantity(value, unit), time, "a-" + readings.size()));
    }
    return readings;
  }

  private static ScoringPolicy mentioningEveryTrend(ScoringPolicy shipped) {
    var trend = shipped.trend();
    return new ScoringPolicy(
        shipped.version(),
        shipped.validity(),
        shipped.spacing(),
        shipped.quiet(),
        shipped.drift(),
        new TrendRule(
            trend.window(), trend.points(), trend.minimum(), trend.level(), 1, trend.horizon()),
        shipped.level(),
        shipped.restarts(),
        shipped.observations(),
        shipped.urgent(),
        shipped.rates());
  }

  private static int kendall(List<Reading> window) {
    int s = 0;
    for (int j = 0; j < window.size(); j++) {
      for (int i = 0; i < j; i++) {
        s += Double.compare(level(window.get(j)), level(window.get(i)));
      }
    }
    return s;
  }

  private static double medianSlope(List<Reading> window) {
    var slopes = new ArrayList<Double>();
    for (int j = 0; j < window.size(); j++) {
      for (int i = 0; i < j; i++) {
        double hours = (millis(window.get(j)) - millis(window.get(i))) / 3.6e6;
        slopes.add((level(window.get(j)) - level(window.get(i))) / hours);
      }
    }
    return new Median().evaluate(slopes.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static List<Instant> times(SeriesState state) {
    var times = new ArrayList<Instant>();
    for (int i = 0; i < state.window().size(); i++) {
      times.add(Instant.ofEpochMilli(state.window().time(i)));
    }
    return times;
  }

  private static double level(Reading reading) {
    return ((Quantity) reading.value()).value().doubleValue();
  }

  private static long millis(Reading reading) {
    return reading.takenAt().toEpochMilli();
  }
}
