package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.driftward.scoring.core.change.Course.START;
import static org.driftward.scoring.core.change.TestCatalogue.quantity;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.DerivedFinding;
import org.driftward.scoring.core.policy.DerivedFinding.How;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class DerivationTest {

  private static final FindingKey PUPILS = FindingKey.of("test-pupil-difference");

  private final TestCatalogue catalogue =
      TestCatalogue.shippedAnd(
          quantity("test-pupil", "mm", Worse.EITHER, null, null),
          quantity("test-apical", "/min", Worse.EITHER, null, null),
          quantity("test-radial", "/min", Worse.EITHER, null, null));

  private final ChangeDetector detector =
      new ChangeDetector(
          catalogue,
          with(
              derived("test-pupil-difference", How.SIDES, List.of("test-pupil"), "mm", "1"),
              derived(
                  "test-pulse-deficit",
                  How.DEFICIT,
                  List.of("test-apical", "test-radial"),
                  "/min",
                  "10")));

  /** Nursing handbooks: apical 106 less radial 93 is a deficit of 13. */
  @Test
  void shouldComputeThePublishedPulseDeficit() {
    var derived =
        detector.derived(
            List.of(
                reading("test-apical", null, "106", "/min"),
                reading("test-radial", null, "93", "/min")));

    assertThat(derived).containsExactly(reading("test-pulse-deficit", null, "13", "/min"));
  }

  /** A radial rate above the apical one cannot be: somebody miscounted. */
  @Test
  void shouldNotComputeANegativeDeficit() {
    assertThat(
            detector.derived(
                List.of(
                    reading("test-apical", null, "92", "/min"),
                    reading("test-radial", null, "93", "/min"))))
        .isEmpty();
  }

  @Test
  void shouldComputeTheDifferenceOfTheSidesEitherWay() {
    assertThat(pupils("3", "4.5")).containsExactly(reading(PUPILS.code(), null, "1.5", "mm"));
    assertThat(pupils("4.5", "3")).containsExactly(reading(PUPILS.code(), null, "1.5", "mm"));
  }

  @Test
  void shouldComputeNothingFromOneSide() {
    assertThat(detector.derived(List.of(reading("test-pupil", Side.LEFT, "3", "mm")))).isEmpty();
    assertThat(detector.derived(List.of(reading("test-pupil", Side.RIGHT, "3", "mm")))).isEmpty();
  }

  /** About one in five people has pupils that differ; only a new difference is a change. */
  @Test
  void shouldSeeANewPupilDifferenceOfAMillimetre() {
    var equal = new Course(detector, PUPILS, "mm").hourly(0, 0.5, 0);
    var unequal = new Course(detector, PUPILS, "mm").hourly(1, 1, 1);

    assertThat(equal.hourly(0.9).changed()).isEmpty();
    assertThat(equal.hourly(1.5).changed()).isPresent();
    assertThat(unequal.hourly(1.5).changed()).isEmpty();
    assertThat(unequal.hourly(2).changed()).isPresent();
  }

  @Test
  void shouldRefuseADerivedFindingOfAnUnknownOne() {
    var unknown = derived("x", How.SIDES, List.of("no-such-finding"), "mm", "1");

    assertThatThrownBy(() -> new ChangeDetector(catalogue, with(unknown)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no-such-finding");
  }

  @Test
  void shouldRefuseADerivedFindingThatTakesACodeOfTheCatalogue() {
    var taken = derived("heart-rate", How.SIDES, List.of("test-pupil"), "mm", "1");

    assertThatThrownBy(() -> new ChangeDetector(catalogue, with(taken)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("heart-rate");
  }

  @Test
  void shouldRefuseTheWrongNumberOfCodes() {
    assertThatThrownBy(() -> derived("x", How.DEFICIT, List.of("test-apical"), "/min", "1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("takes 2 codes");
  }

  private List<Reading> pupils(String left, String right) {
    return detector.derived(
        List.of(
            reading("test-pupil", Side.LEFT, left, "mm"),
            reading("test-pupil", Side.RIGHT, right, "mm")));
  }

  private static Reading reading(String code, @Nullable Side side, String value, String unit) {
    return new Reading(
        new FindingKey(code, null, side), new Quantity(new BigDecimal(value), unit), START, "a-1");
  }

  private static DerivedFinding derived(
      String code, How how, List<String> of, String unit, String change) {
    return new DerivedFinding(
        code, code, how, of, unit, new BigDecimal(change), null, Group.BRAIN, "test");
  }

  private static ScoringPolicy with(DerivedFinding... derived) {
    var shipped = PolicyFile.shipped();
    return new ScoringPolicy(
        shipped.version(),
        shipped.validity(),
        shipped.spacing(),
        shipped.quiet(),
        shipped.drift(),
        shipped.trend(),
        shipped.level(),
        shipped.restarts(),
        shipped.observations(),
        List.of(derived));
  }
}
