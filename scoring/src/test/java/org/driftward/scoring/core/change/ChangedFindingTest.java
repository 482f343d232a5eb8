package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.driftward.scoring.core.change.Course.START;
import static org.driftward.scoring.core.change.TestCatalogue.coded;
import static org.driftward.scoring.core.change.TestCatalogue.grade;
import static org.driftward.scoring.core.change.TestCatalogue.quantity;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;

/**
 * Changed findings. The rules are data; these entries stand for what a head-to-toe examination
 * finds. Scales: pulse amplitude 0 to 4 after Bates, muscle power 0 to 5 of the Medical Research
 * Council, pitting oedema 0 to 4 common practice.
 */
class ChangedFindingTest {

  private final ChangeDetector detector =
      new ChangeDetector(
          TestCatalogue.shippedAnd(
              grade("pulse-amplitude", 0, 4, Worse.LOWER),
              grade("muscle-power", 0, 5, Worse.LOWER),
              grade("oedema", 0, 4, Worse.HIGHER),
              quantity("capillary-refill", "s", Worse.HIGHER, "1", "0.5"),
              quantity("urine-output", "mL/h", Worse.LOWER, "20", "10"),
              quantity("body-weight", "kg", Worse.EITHER, "2", "0.3"),
              coded("orientation", Worse.HIGHER, List.of("full"), "full", "partial", "lost"),
              coded(
                  "breath-sounds",
                  Worse.EITHER,
                  List.of("clear"),
                  "clear",
                  "crackles",
                  "wheeze",
                  "stridor"),
              coded("bowel-sounds", Worse.EITHER, List.of("present"), "present", "absent"),
              coded("skin-colour", Worse.NONE, List.of("usual"), "usual", "pale")),
          PolicyFile.shipped());

  @Test
  void shouldSayThatAPulseWasLost() {
    var key = new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT);
    var course = new Course(detector, key, null).hourly(2, 2, 2);

    assertThat(course.changed()).isEmpty();

    var changed = course.hourly(0).changed().orElseThrow();
    assertThat(changed.code()).isEqualTo("pulse-amplitude");
    assertThat(changed.site()).isEqualTo("dorsalis-pedis");
    assertThat(changed.side()).isEqualTo(Side.LEFT);
    assertThat(changed.from()).isEqualTo(Scalar.of(BigDecimal.valueOf(2)));
    assertThat(changed.to()).isEqualTo(Scalar.of(BigDecimal.ZERO));
    assertThat(changed.since()).isEqualTo(START.plus(Duration.ofHours(3)));
    assertThat(changed.group()).isEqualTo(Group.CIRCULATION);
    assertThat(changed.words())
        .isEqualTo("pulse amplitude dorsalis pedis left: 0, usually 2 (3 earlier values)");
  }

  @Test
  void shouldNotCallAStrongerPulseOrLimbChanged() {
    assertThat(Course.of(detector, "pulse-amplitude", null).hourly(1, 3).changed()).isEmpty();
    assertThat(Course.of(detector, "muscle-power", null).hourly(4, 5).changed()).isEmpty();
    assertThat(Course.of(detector, "muscle-power", null).hourly(5, 4).changed()).isPresent();
  }

  @Test
  void shouldSeeNewOedemaAndASlowerCapillaryRefill() {
    assertThat(Course.of(detector, "oedema", null).hourly(0, 1).changed()).isPresent();
    assertThat(Course.of(detector, "capillary-refill", "s").hourly(2, 2.9).changed()).isEmpty();
    assertThat(Course.of(detector, "capillary-refill", "s").hourly(2, 3).changed()).isPresent();
  }

  /** 2.1 and 1.1 differ by 1 although their binary fractions differ by less. */
  @Test
  void shouldCountADifferenceOfExactlyTheChange() {
    assertThat(Course.of(detector, "capillary-refill", "s").hourly(1.1, 2.1).changed()).isPresent();
  }

  @Test
  void shouldSeeFallenUrineOutput() {
    var course = Course.of(detector, "urine-output", "mL/h").hourly(60, 70, 50);

    assertThat(course.hourly(41).changed()).isEmpty();
    assertThat(course.hourly(35).changed().orElseThrow().words())
        .isEqualTo("urine output: 35 mL/h, usually 55 mL/h (4 earlier values)");
  }

  @Test
  void shouldCountEitherWayWhereEitherIsWorse() {
    assertThat(Course.of(detector, "body-weight", "kg").hourly(70, 72).changed()).isPresent();
    assertThat(Course.of(detector, "body-weight", "kg").hourly(70, 68).changed()).isPresent();
    assertThat(Course.of(detector, "body-weight", "kg").hourly(70, 71.9).changed()).isEmpty();
  }

  @Test
  void shouldSayThatOrientationWasLost() {
    var changed =
        Course.of(detector, "orientation", null).hourly("full", "lost").changed().orElseThrow();

    assertThat(changed.from()).isEqualTo(Scalar.of("full"));
    assertThat(changed.to()).isEqualTo(Scalar.of("lost"));
    assertThat(changed.words()).isEqualTo("orientation: lost, usually full (1 earlier value)");
  }

  /** RCP NEWS2 2017: confusion scores when it is new; it is judged by the patient's usual state. */
  @Test
  void shouldJudgeConfusionByThePatientsUsualState() {
    var usuallyConfused =
        Course.of(detector, "consciousness", null).hourly("confused", "confused", "confused");
    var usuallyAlert =
        Course.of(detector, "consciousness", null).hourly("alert", "alert", "confused");

    assertThat(usuallyConfused.hourly("confused").changed()).isEmpty();
    assertThat(usuallyConfused.hourly("voice").changed()).isPresent();
    assertThat(usuallyAlert.changed()).isPresent();
  }

  @Test
  void shouldKeepCallingItChangedUntilItIsAsUsualAgain() {
    var course = Course.of(detector, "consciousness", null).hourly("alert", "confused");
    var first = course.changed().orElseThrow().since();

    for (int i = 0; i < 30; i++) {
      course.hourly("confused");
    }

    assertThat(course.changed().orElseThrow().since()).isEqualTo(first);
    assertThat(course.hourly("alert").changed()).isEmpty();
    assertThat(course.hourly("confused").changed().orElseThrow().since()).isAfter(first);
  }

  @Test
  void shouldTakeTheBetterOfTwoForTheUsualState() {
    var course = Course.of(detector, "consciousness", null).hourly("confused", "alert");

    assertThat(course.hourly("confused").changed()).isPresent();
  }

  /** The words have no order: another added sound is new, the usual one and none are not. */
  @Test
  void shouldSeeANewAddedSound() {
    var course = Course.of(detector, "breath-sounds", null).hourly("crackles", "crackles");

    assertThat(course.hourly("crackles").changed()).isEmpty();
    assertThat(course.hourly("clear").changed()).isEmpty();
    assertThat(course.hourly("wheeze").changed().orElseThrow().from())
        .isEqualTo(Scalar.of("crackles"));
  }

  @Test
  void shouldSeeThatBowelSoundsAreAbsent() {
    assertThat(Course.of(detector, "bowel-sounds", null).hourly("present", "absent").changed())
        .isPresent();
    assertThat(Course.of(detector, "bowel-sounds", null).hourly("absent", "present").changed())
        .isEmpty();
  }

  @Test
  void shouldNotCallTheFirstValueChanged() {
    assertThat(Course.of(detector, "consciousness", null).hourly("voice").changed()).isEmpty();
  }

  @Test
  void shouldSeeAChangeWithinTheSpacing() {
    var course = Course.of(detector, "consciousness", null).hourly("alert");

    course.at(
        START.plusMillis(1), new org.driftward.ingest.contract.FindingValue.Coded("confused"));

    assertThat(course.changed()).isPresent();
  }

  @Test
  void shouldTakeAnotherUsualStateAfterADocumentedChange() {
    var course = Course.of(detector, "consciousness", null).hourly("alert", "confused").restart();

    assertThat(course.changed()).isEmpty();
    assertThat(course.hourly("confused", "confused").changed()).isEmpty();
  }

  @Test
  void shouldSayNothingWhereNoDirectionIsWorse() {
    assertThat(Course.of(detector, "skin-colour", null).hourly("usual", "pale").changed())
        .isEmpty();
  }

  /** Of words without an order the most frequent is usual, not the middle one. */
  @Test
  void shouldTakeTheMostFrequentOfWordsWithoutAnOrder() {
    var several =
        new ChangeDetector(
            TestCatalogue.shippedAnd(
                coded("posture-seen", Worse.EITHER, List.of("a", "b", "c"), "a", "b", "c", "d")),
            PolicyFile.shipped());
    var course = Course.of(several, "posture-seen", null).hourly("a", "a", "b", "c", "c", "d");

    assertThat(course.changed().orElseThrow().from()).isEqualTo(Scalar.of("a"));
  }

  @Test
  void shouldRefuseAnEntryWhoseNoiseOrChangeIsNothing() {
    for (var entry :
        List.of(
            quantity("x", "s", Worse.HIGHER, "0", "1"),
            quantity("x", "s", Worse.HIGHER, "1", "0"),
            quantity("x", "s", Worse.HIGHER, "-1", "1"))) {
      assertThatThrownBy(
              () -> new ChangeDetector(TestCatalogue.shippedAnd(entry), PolicyFile.shipped()))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("must be positive");
    }
  }
}
