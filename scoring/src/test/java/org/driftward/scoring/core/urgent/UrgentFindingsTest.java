package org.driftward.scoring.core.urgent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.CallNow;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.UrgentFinding;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.UrgentValue;
import org.driftward.scoring.core.score.Subject;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Values that call somebody beside every score. The sources stand with each value in {@code
 * policy/scoring.yaml} and the catalogue: MERIT calling criteria 2005 and PALS from memory, Shields
 * et al. 2016, the rest local policy.
 */
class UrgentFindingsTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();
  private static final Instant TAKEN = Instant.parse("2026-01-05T03:10:00Z");
  private static final Subject ADULT = Subject.ofAge(70);
  private static final Subject PREGNANT = new Subject(30, 1, Set.of("pregnant"));

  private final UrgentFindings shipped =
      new UrgentFindings(CATALOGUE, PolicyFile.shipped().urgent());

  @ParameterizedTest
  @CsvSource({
    "respiratory-rate, 4, HIGH",
    "respiratory-rate, 5,",
    "respiratory-rate, 36,",
    "respiratory-rate, 37, HIGH",
    "oxygen-saturation, 84, HIGH",
    "oxygen-saturation, 85,",
    "heart-rate, 39, HIGH",
    "heart-rate, 40,",
    "heart-rate, 140,",
    "heart-rate, 141, HIGH",
    "systolic-pressure, 79, HIGH",
    "systolic-pressure, 80, MEDIUM",
    "systolic-pressure, 90,",
    "systolic-pressure, 199,",
    "systolic-pressure, 200, MEDIUM",
    "temperature, 32.0, HIGH",
    "temperature, 32.1,",
    "temperature, 39.9,",
    "temperature, 40.0, MEDIUM",
    "temperature, 41.0, HIGH"
  })
  void shouldHaveAFloorForAdults(String code, BigDecimal value, @Nullable Level level) {
    assertThat(level(code, value, ADULT)).isEqualTo(level);
  }

  /**
   * The first of the cases that nobody heard: all of these were class "triggered" and no episode.
   */
  @ParameterizedTest
  @CsvSource({
    "heart-rate, 140, HIGH", "oxygen-saturation, 82, HIGH", "systolic-pressure, 70, HIGH",
    "systolic-pressure, 160, HIGH", "diastolic-pressure, 110, HIGH", "diastolic-pressure, 109,",
    "oxygen-saturation, 89, HIGH", "oxygen-saturation, 90,", "respiratory-rate, 31, HIGH"
  })
  void shouldHaveAFloorInPregnancy(String code, BigDecimal value, @Nullable Level level) {
    assertThat(level(code, value, PREGNANT)).isEqualTo(level);
  }

  /**
   * PALS, from memory: systolic 70 and twice the age from one to nine, 90 from ten, 70 in infants.
   */
  @ParameterizedTest
  @CsvSource({
    "0, systolic-pressure, 69, HIGH",
    "0, systolic-pressure, 70,",
    "5, systolic-pressure, 79, HIGH",
    "5, systolic-pressure, 80,",
    "12, systolic-pressure, 89, HIGH",
    "12, systolic-pressure, 90,",
    "5, oxygen-saturation, 70, HIGH",
    "5, oxygen-saturation, 90,",
    "5, heart-rate, 59, HIGH",
    "0, heart-rate, 219,",
    "0, heart-rate, 220, HIGH",
    "5, heart-rate, 180, HIGH",
    "5, heart-rate, 141,",
    "5, temperature, 41, HIGH",
    "5, respiratory-rate, 61, HIGH",
    "5, respiratory-rate, 9, HIGH"
  })
  void shouldHaveAFloorForChildren(int age, String code, BigDecimal value, @Nullable Level level) {
    assertThat(level(code, value, Subject.ofAge(age))).isEqualTo(level);
  }

  @Test
  void shouldAllowALowerSaturationOnTheSecondOxygenScaleOnly() {
    var scale2 = new Subject(70, 2, Set.of());

    assertThat(level("oxygen-saturation", new BigDecimal("84"), scale2)).isNull();
    assertThat(level("oxygen-saturation", new BigDecimal("79"), scale2)).isEqualTo(Level.HIGH);
  }

  @ParameterizedTest
  @CsvSource({
    "stridor, at-rest, HIGH",
    "stridor, absent,",
    "chest-pain, at-rest, MEDIUM",
    "rash, does-not-blanch, HIGH",
    "rash, blanches,",
    "pupil-reaction, fixed, HIGH",
    "consciousness, unresponsive, HIGH",
    "consciousness, pain, HIGH",
    "consciousness, alert,",
    "staff-concern, worried, MEDIUM",
    "family-concern, very-worried, HIGH",
    "patient-concern, none,",
    "breathing-pattern, gasping, HIGH"
  })
  void shouldCallForWordsOfTheCatalogue(String code, String word, @Nullable Level level) {
    var found = shipped.among(List.of(reading(code, new Coded(word))), ADULT);

    assertThat(found.stream().map(UrgentFinding::level).findFirst().orElse(null)).isEqualTo(level);
  }

  @ParameterizedTest
  @CsvSource({
    "gcs-total, 3, HIGH",
    "gcs-total, 8, HIGH",
    "gcs-total, 9, MEDIUM",
    "gcs-total, 13,",
    "pain-score, 10, MEDIUM",
    "pain-score, 7, LOW",
    "pain-score, 6,"
  })
  void shouldCallForGrades(String code, int grade, @Nullable Level level) {
    var found = shipped.among(List.of(reading(code, new Grade(grade))), ADULT);

    assertThat(found.stream().map(UrgentFinding::level).findFirst().orElse(null)).isEqualTo(level);
  }

  @Test
  void shouldCallForADifferenceOfThePupilsAtAFirstExamination() {
    assertThat(level("pupil-difference", new BigDecimal("4"), ADULT)).isEqualTo(Level.MEDIUM);
    assertThat(level("pupil-difference", new BigDecimal("2"), ADULT)).isNull();
  }

  @Test
  void shouldSayHowFarPastTheEdgeAndPutTheGravestFirst() {
    var found =
        shipped.among(
            List.of(
                reading("temperature", number("40.5", "Cel")),
                reading("oxygen-saturation", number("65", "%")),
                reading("heart-rate", number("150", "/min"))),
            ADULT);

    assertThat(found)
        .extracting(UrgentFinding::code)
        .containsExactly("oxygen-saturation", "heart-rate", "temperature");
    var worse = shipped.among(List.of(reading("oxygen-saturation", number("60", "%"))), ADULT);
    assertThat(worse.get(0).beyond()).isGreaterThan(found.get(0).beyond());
    assertThat(worse.get(0).words()).isEqualTo("Oxygen saturation 60 % (below 85)");
  }

  @Test
  void shouldNameThePlace() {
    var key = new FindingKey("pupil-reaction", null, Side.LEFT);
    var found = shipped.among(List.of(new Reading(key, new Coded("fixed"), TAKEN, "A-1")), ADULT);

    assertThat(found.get(0).side()).isEqualTo(Side.LEFT);
    assertThat(found.get(0).words()).isEqualTo("Pupil reaction to light left fixed");
  }

  @Test
  void shouldNameASourceForEveryValueOrSayThatItIsLocalPolicy() {
    assertThat(PolicyFile.shipped().urgent())
        .isNotEmpty()
        .allSatisfy(value -> assertThat(value.when().source()).isNotBlank());
    assertThat(CATALOGUE.entries())
        .filteredOn(entry -> !entry.callNow().isEmpty())
        .hasSizeGreaterThan(40)
        .allMatch(entry -> entry.kind() != Kind.TEXT);
  }

  @Test
  void shouldRefuseAValueOfAFindingThatNobodyKnows() {
    var when = new CallNow(Level.HIGH, List.of(), null, BigDecimal.ONE, null, null, null, "test");
    var unknown = new UrgentValue("humming", Set.of(), Set.of(), null, when);

    assertThatThrownBy(() -> new UrgentFindings(CATALOGUE, List.of(unknown)))
        .hasMessage("urgent: no finding humming");
  }

  private @Nullable Level level(String code, BigDecimal value, Subject subject) {
    var unit = CATALOGUE.find(code).orElseThrow().unit();
    var reading = reading(code, new Quantity(value, String.valueOf(unit)));
    return shipped.among(List.of(reading), subject).stream()
        .map(UrgentFinding::level)
        .findFirst()
        .orElse(null);
  }

  private static Quantity number(String value, String unit) {
    return new Quantity(new BigDecimal(value), unit);
  }

  private static Reading reading(String code, FindingValue value) {
    return new Reading(FindingKey.of(code), value, TAKEN, "A-1");
  }
}
