package org.driftward.ingest.core.derive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Derivations.Result;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StandardDerivationsTest {

  /**
   * 83/50 gives 61, 130/85 gives 100 and 45, 110/80 gives 30: worked examples of nursing handbooks.
   * The others: computed from the formula by hand.
   */
  @ParameterizedTest
  @CsvSource({
    "83,50,61,33",
    "130,85,100,45",
    "110,80,90,30",
    "120,80,93.3333,40",
    "90,50,63.3333,40",
    "110,70,83.3333,40",
    "200,90,126.6667,110",
  })
  void shouldComputeMeanAndPulsePressure(
      String systolic, String diastolic, BigDecimal mean, BigDecimal pulse) {
    var result =
        derive(
            Finding.quantity("systolic-pressure", systolic, "mm[Hg]"),
            Finding.quantity("diastolic-pressure", diastolic, "mm[Hg]"));

    assertThat(number(result, "mean-arterial-pressure"))
        .isCloseTo(mean, within(new BigDecimal("0.0001")));
    assertThat(number(result, "pulse-pressure")).isEqualByComparingTo(pulse);
  }

  @Test
  void shouldNotComputeOverAMeasuredMean() {
    var result =
        derive(
            Finding.quantity("systolic-pressure", "120", "mm[Hg]"),
            Finding.quantity("diastolic-pressure", "80", "mm[Hg]"),
            Finding.quantity("mean-arterial-pressure", "90", "mm[Hg]"));

    assertThat(codes(result)).containsExactly("pulse-pressure");
  }

  @Test
  void shouldComputeNothingFromHalfAPressure() {
    assertThat(derive(Finding.quantity("systolic-pressure", "120", "mm[Hg]")).derived()).isEmpty();
  }

  /** E4 V4 M5 = 13: the Glasgow Coma Scale example of HL7 FHIR R4. Ends: Teasdale and Jennett. */
  @ParameterizedTest
  @CsvSource({"4,4,5,13", "4,5,6,15", "1,1,1,3"})
  void shouldAddUpTheGlasgowComaScale(int eye, int verbal, int motor, int total) {
    var result = derive(glasgow(eye, verbal, motor));

    assertThat(find(result, "gcs-total").finding()).isEqualTo(Finding.grade("gcs-total", total));
    assertThat(find(result, "gcs-total").formula())
        .isEqualTo("E" + eye + " + V" + verbal + " + M" + motor);
  }

  @Test
  void shouldMakeNoTotalWhereOnePartCannotBeTested() {
    var result = derive(Finding.grade("gcs-eye", 4), Finding.grade("gcs-motor", 6));

    assertThat(result.derived()).isEmpty();
  }

  /** McNarry and Goldhill 2004: only 15 is alert without overlap. */
  @Test
  void shouldCallFifteenAlert() {
    assertThat(find(derive(glasgow(4, 5, 6)), "consciousness").finding())
        .isEqualTo(Finding.coded("consciousness", "alert"));
    assertThat(codes(derive(Finding.grade("gcs-total", 15)))).containsExactly("consciousness");
  }

  @ParameterizedTest
  @CsvSource({"3,5,6", "4,4,6", "4,5,5", "1,1,1"})
  void shouldAskAboutEveryTotalBelowFifteen(int eye, int verbal, int motor) {
    var result = derive(glasgow(eye, verbal, motor));

    assertThat(codes(result)).containsExactly("gcs-total");
    assertThat(result.questions()).extracting(Question::code).containsExactly("consciousness");
  }

  @Test
  void shouldNotDeriveOverRecordedConsciousness() {
    var findings = new ArrayList<>(List.of(glasgow(4, 5, 6)));
    findings.add(Finding.coded("consciousness", "confused"));

    var result = Derivations.standard().from(findings);

    assertThat(codes(result)).containsExactly("gcs-total");
    assertThat(result.questions()).isEmpty();
  }

  @Test
  void shouldCallFullOrientationWithOpenEyesAndObeyedCommandsAlert() {
    var findings = new ArrayList<>(orientation("oriented"));
    findings.add(Finding.grade("gcs-eye", 4));
    findings.add(Finding.grade("gcs-motor", 6));

    var alert = find(Derivations.standard().from(findings), "consciousness");

    assertThat(alert.finding()).isEqualTo(Finding.coded("consciousness", "alert"));
    assertThat(alert.from()).hasSize(6);
  }

  @Test
  void shouldAskWhereOrientationAloneIsKnown() {
    var result = Derivations.standard().from(orientation("oriented"));

    assertThat(result.derived()).isEmpty();
    assertThat(result.questions()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"uncertain", "disoriented"})
  void shouldAskWhetherALostOrientationIsNew(String time) {
    var findings = new ArrayList<>(orientation("oriented"));
    findings.set(2, Finding.coded("orientation-time", time));
    findings.add(Finding.grade("gcs-eye", 4));
    findings.add(Finding.grade("gcs-motor", 6));

    var result = Derivations.standard().from(findings);

    assertThat(result.derived()).isEmpty();
    assertThat(result.questions())
        .singleElement()
        .satisfies(question -> assertThat(question.words()).contains("new for this patient"));
  }

  /** 106 - 93 = 13: worked example of nursing pages. */
  @Test
  void shouldComputeThePulseDeficit() {
    assertThat(number(derive(rates("106", "93")), "pulse-deficit")).isEqualByComparingTo("13");
    assertThat(number(derive(rates("80", "80")), "pulse-deficit")).isZero();
  }

  @Test
  void shouldAskToCountAgainWhereTheWristBeatsFasterThanTheHeart() {
    var result = derive(rates("80", "82"));

    assertThat(result.derived()).isEmpty();
    assertThat(result.questions()).extracting(Question::code).containsExactly("pulse-deficit");
  }

  @Test
  void shouldComputeTheDifferenceOfThePupilsWhicheverIsLarger() {
    assertThat(number(derive(pupil(Side.LEFT, "5"), pupil(Side.RIGHT, "3.5")), "pupil-difference"))
        .isEqualByComparingTo("1.5");
    assertThat(number(derive(pupil(Side.LEFT, "3"), pupil(Side.RIGHT, "6")), "pupil-difference"))
        .isEqualByComparingTo("3");
  }

  @Test
  void shouldDeriveOnlyWhatTheCatalogueKnowsInItsUnit() {
    var findings = new ArrayList<>(List.of(glasgow(4, 5, 6)));
    findings.addAll(
        List.of(
            Finding.quantity("systolic-pressure", "120", "mm[Hg]"),
            Finding.quantity("diastolic-pressure", "80", "mm[Hg]"),
            pupil(Side.LEFT, "3"),
            pupil(Side.RIGHT, "3")));
    findings.addAll(List.of(rates("90", "80")));

    var derived = Derivations.standard().from(findings).derived();

    assertThat(derived).hasSize(6);
    assertThat(derived)
        .allSatisfy(
            each -> {
              var entry = Catalogue.shipped().find(each.finding().code()).orElseThrow();
              if (each.finding().value() instanceof Quantity quantity) {
                assertThat(entry.formula()).isNotNull();
                assertThat(quantity.unit()).isEqualTo(entry.unit());
                assertThat(entry.accepted().holds(quantity.value())).isTrue();
              }
            });
  }

  private static Result derive(Finding... findings) {
    return Derivations.standard().from(Arrays.asList(findings));
  }

  private static Finding[] glasgow(int eye, int verbal, int motor) {
    return new Finding[] {
      Finding.grade("gcs-eye", eye),
      Finding.grade("gcs-verbal", verbal),
      Finding.grade("gcs-motor", motor)
    };
  }

  private static List<Finding> orientation(String word) {
    return List.of(
        Finding.coded("orientation-person", word),
        Finding.coded("orientation-place", word),
        Finding.coded("orientation-time", word),
        Finding.coded("orientation-situation", word));
  }

  private static Finding[] rates(String apical, String radial) {
    return new Finding[] {
      Finding.quantity("apical-rate", apical, "/min"),
      Finding.quantity("radial-rate", radial, "/min")
    };
  }

  private static Finding pupil(Side side, String size) {
    return new Finding(
        new FindingKey("pupil-size", null, side),
        new FindingValue.Quantity(new BigDecimal(size), "mm"));
  }

  private static Derived find(Result result, String code) {
    return result.derived().stream()
        .filter(each -> each.finding().code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static BigDecimal number(Result result, String code) {
    return ((Quantity) find(result, code).finding().value()).value();
  }

  private static List<String> codes(Result result) {
    return result.derived().stream().map(each -> each.finding().code()).toList();
  }
}
