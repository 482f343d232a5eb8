package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.driftward.scoring.core.change.Course.START;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.RateFinding;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;

/** Under the shipped catalogue and policy. */
class DerivedTest {

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());

  /** Nursing handbooks: apical 106 less radial 93 is a deficit of 13. */
  @Test
  void shouldFollowThePulseDeficit() {
    assertThat(detector.derived(List.of(rate("apical-rate", "106"), rate("radial-rate", "93"))))
        .containsExactly(rate("pulse-deficit", "13"));
    assertThat(Course.of(detector, "pulse-deficit", "/min").hourly(0, 2, 13).changed()).isPresent();
  }

  @Test
  void shouldFollowTheDifferenceOfThePupils() {
    var left = new FindingKey("pupil-size", null, Side.LEFT);
    var right = new FindingKey("pupil-size", null, Side.RIGHT);

    assertThat(
            detector.derived(
                List.of(reading(left, quantity("3", "mm")), reading(right, quantity("4.5", "mm")))))
        .containsExactly(reading(FindingKey.of("pupil-difference"), quantity("1.5", "mm")));
    assertThat(detector.derived(List.of(reading(left, quantity("3", "mm"))))).isEmpty();
  }

  /** About one in five people has pupils that differ; only a new difference is a change. */
  @Test
  void shouldSeeANewPupilDifferenceOfAMillimetre() {
    assertThat(pupils(0, 0.5, 0).hourly(0.9).changed()).isEmpty();
    assertThat(pupils(0, 0.5, 0).hourly(1).changed()).isPresent();
    assertThat(pupils(1, 1, 1).hourly(1.5).changed()).isEmpty();
    assertThat(pupils(1, 1, 1).hourly(2).changed()).isPresent();
  }

  @Test
  void shouldFollowUrineOutputByTheHour() {
    var derived =
        detector.derived(
            List.of(
                reading(FindingKey.of("urine-output"), quantity("300", "mL")),
                reading(FindingKey.of("urine-output-period"), quantity("6", "h"))));

    assertThat(derived)
        .containsExactly(reading(FindingKey.of("urine-rate"), quantity("50", "mL/h")));
    assertThat(Course.of(detector, "urine-rate", "mL/h").hourly(60, 64, 56, 36).changed())
        .isEmpty();
    assertThat(Course.of(detector, "urine-rate", "mL/h").hourly(60, 64, 56, 35).changed())
        .isPresent();
  }

  @Test
  void shouldComputeNoRateWithoutTheHours() {
    assertThat(
            detector.derived(
                List.of(reading(FindingKey.of("urine-output"), quantity("300", "mL")))))
        .isEmpty();
  }

  @Test
  void shouldComputeNoRateOverNoTime() {
    assertThat(
            detector.derived(
                List.of(
                    reading(FindingKey.of("urine-output"), quantity("300", "mL")),
                    reading(FindingKey.of("urine-output-period"), quantity("0", "h")))))
        .isEmpty();
  }

  /** The two pressures have their own histories; their mean adds cost and no knowledge. */
  @Test
  void shouldNotFollowWhatSaysNothingNew() {
    assertThat(
            detector.derived(
                List.of(
                    reading(FindingKey.of("systolic-pressure"), quantity("120", "mm[Hg]")),
                    reading(FindingKey.of("diastolic-pressure"), quantity("80", "mm[Hg]")))))
        .isEmpty();
  }

  /**
   * A derived state of consciousness would outlive the coma scale it came from; the scale's parts
   * have their own histories.
   */
  @Test
  void shouldNotFollowADerivedStateOfConsciousness() {
    var derived =
        detector.derived(
            List.of(
                reading(FindingKey.of("gcs-eye"), new Grade(4)),
                reading(FindingKey.of("gcs-verbal"), new Grade(5)),
                reading(FindingKey.of("gcs-motor"), new Grade(6))));

    assertThat(derived).extracting(Reading::code).containsExactly("gcs-total");
  }

  @Test
  void shouldComputeNothingFromNothing() {
    assertThat(detector.derived(List.of())).isEmpty();
    assertThat(detector.derived(List.of(reading(FindingKey.of("cough"), new Coded("none")))))
        .isEmpty();
  }

  @Test
  void shouldRefuseARateOfAnUnknownAmount() {
    assertThatThrownBy(() -> new ChangeDetector(Catalogue.shipped(), with("x", "no-such-finding")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no-such-finding");
  }

  @Test
  void shouldRefuseARateThatTakesACodeOfTheCatalogue() {
    assertThatThrownBy(
            () -> new ChangeDetector(Catalogue.shipped(), with("heart-rate", "urine-output")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("heart-rate");
  }

  private Course pupils(double... differences) {
    return Course.of(detector, "pupil-difference", "mm").hourly(differences);
  }

  private static Reading rate(String code, String value) {
    return reading(FindingKey.of(code), quantity(value, "/min"));
  }

  private static FindingValue quantity(String value, String unit) {
    return new Quantity(new BigDecimal(value), unit);
  }

  private static Reading reading(FindingKey key, FindingValue value) {
    return new Reading(key, value, START, "a-1");
  }

  private static ScoringPolicy with(String code, String amount) {
    var shipped = PolicyFile.shipped();
    var rate =
        new RateFinding(
            code,
            code,
            amount,
            "urine-output-period",
            "mL/h",
            Worse.LOWER,
            BigDecimal.TEN,
            null,
            Group.KIDNEY,
            "test");
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
        shipped.urgent(),
        List.of(rate));
  }
}
