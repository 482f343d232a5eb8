package org.driftward.scoring.core.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Ours, no source. */
class ComparisonTest {

  private static final Instant AT = Instant.parse("2026-01-05T08:00:00Z");

  private final Sayings before = new Sayings("one", "1");
  private final Sayings after = new Sayings("two", "2");

  /** What one judge says; to be changed in one place. */
  private static final class Sayings {
    private final String policy;
    private List<Score> scores;
    private List<Drift> drift = List.of(drift(2.5, false));
    private List<Trend> trend = List.of(trend(1.25, false, null));
    private List<ChangedFinding> changed = List.of();
    private @Nullable Instant due = AT.plus(Duration.ofHours(4));

    Sayings(String policy, String version) {
      this.policy = policy;
      this.scores = List.of(score("news2", version, 3, 3));
    }

    Snapshot snapshot() {
      return new Snapshot(
          "V-1",
          AT,
          "A-1",
          1,
          false,
          false,
          policy,
          0,
          scores,
          drift,
          trend,
          changed,
          AT,
          List.of(),
          due,
          Duration.ofHours(4),
          "NEWS2 3",
          null);
    }
  }

  private static Score score(String id, String version, int low, int high) {
    return new Score(
        id,
        id,
        version,
        BigDecimal.valueOf(low),
        BigDecimal.valueOf(high),
        low == high,
        "low",
        low == high ? "low" : "medium",
        1,
        null,
        low == high ? List.of() : List.of("temperature"),
        List.of());
  }

  private static Drift drift(double size, boolean worse) {
    return new Drift("respiratory-rate", null, null, 20, "/min", 16, 2, size, worse, 4, 6, AT, AT);
  }

  private static Trend trend(double perHour, boolean significant, @Nullable Instant crossing) {
    return new Trend(
        "heart-rate",
        null,
        null,
        perHour,
        0.02,
        9,
        6,
        AT,
        significant,
        crossing,
        crossing,
        null,
        crossing == null ? null : 110.0);
  }

  private List<String> differences() {
    return Comparison.of(before.snapshot(), after.snapshot()).stream()
        .map(one -> one.what() + " | " + one.before() + " | " + one.after())
        .toList();
  }

  @Test
  void shouldFindNoneInTheNamesOfVersionsAlone() {
    assertThat(differences()).isEmpty();
  }

  @Test
  void shouldNameTheMoment() {
    after.due = null;

    assertThat(Comparison.of(before.snapshot(), after.snapshot()))
        .containsExactly(new Difference("V-1", "A-1", AT, "due", "2026-01-05T12:00:00Z", null));
  }

  @Test
  void shouldTellATotalThatIsOpenFromOneThatIsSettled() {
    after.scores = List.of(score("news2", "2", 2, 5));

    assertThat(differences())
        .containsExactly("score:news2 | 3, low | 2 to 5, low to medium, missing [temperature]");
  }

  @Test
  void shouldTellWhatLeadsAndWhatCameAndWent() {
    after.scores = List.of(score("own", "2", 1, 1));

    assertThat(differences())
        .containsExactly(
            "leading | news2 | own", "score:news2 | 3, low | null", "score:own | null | 1, low");
  }

  @Test
  void shouldTellTheUsualLevel() {
    after.scores = List.of(score("news2", "2", 3, 3).withUsual(BigDecimal.ONE));

    assertThat(differences()).containsExactly("score:news2 | 3, low | 3, low, usually 1");
  }

  @Test
  void shouldTellDriftThatCounts() {
    after.drift = List.of(drift(3.6, true));

    assertThat(differences())
        .containsExactly(
            "drift:respiratory-rate | 2.5 spreads of 2 from 16, added up 4"
                + " | 3.6 spreads of 2 from 16, added up 4, worse");
  }

  @Test
  void shouldTellATrendAndItsCrossing() {
    after.trend = List.of(trend(-1.25, true, AT));

    assertThat(differences())
        .containsExactly(
            "trend:heart-rate | 1.25 per hour over 6 values"
                + " | -1.25 per hour over 6 values, significant, crossing 2026-01-05T08:00:00Z");
  }

  @Test
  void shouldTellATrendThatHoldsWithoutASign() {
    after.trend = List.of(trend(0, false, null));

    assertThat(differences())
        .containsExactly(
            "trend:heart-rate | 1.25 per hour over 6 values | 0 per hour over 6 values");
  }

  /** A difference may be logged; what it says of the patient must not be. */
  @Test
  void shouldSayWhichMomentDiffersAndNeverHow() {
    var one = new Difference("V-1", "A-1", AT, "due", "before", "after");

    assertThat(one).hasToString("Difference[A-1 due]");
    assertThat(one.kind()).isEqualTo("due");
  }

  @Test
  void shouldTellAChangedFindingByItsPlace() {
    after.changed =
        List.of(
            new ChangedFinding(
                "pulse-amplitude",
                "radial",
                Side.LEFT,
                Scalar.of("2"),
                Scalar.of("0"),
                AT,
                Group.CIRCULATION,
                "pulse lost"));

    assertThat(Comparison.of(before.snapshot(), after.snapshot()))
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.what()).isEqualTo("changed:pulse-amplitude radial left");
              assertThat(one.kind()).isEqualTo("changed");
              assertThat(one.after()).isEqualTo("pulse lost");
            });
  }
}
