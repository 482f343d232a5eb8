package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.well;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What counts as an input, shown on NEWS2. All rules here are engineering choices unless sourced.
 */
class DerivedInputsTest {

  private static Bedside withoutGas() {
    return well().without("inspired-oxygen");
  }

  @ParameterizedTest
  @CsvSource({
    "oxygen-flow,0,0",
    "oxygen-flow,0.5,2",
    "oxygen-flow,15,2",
    "inspired-oxygen-fraction,21,0",
    "inspired-oxygen-fraction,21.5,2",
    "inspired-oxygen-fraction,28,2"
  })
  void shouldReadOxygenFromFlowOrConcentration(String code, String value, int points) {
    assertThat(withoutGas().with(code, value).total("news2")).isEqualTo(points);
  }

  @Test
  void shouldSayWhatOxygenWasReadFrom() {
    var scored = withoutGas().with("oxygen-flow", 2).scored("news2", "inspired-oxygen");
    assertThat(scored.value().plain()).isEqualTo("oxygen");
    assertThat(scored.derivedFrom()).isEqualTo("oxygen-flow 2 L/min");
  }

  @Test
  void shouldLetTheNewestRecordOfOxygenCount() {
    var weaned =
        withoutGas().ago("PT2H").with("oxygen-flow", 2).ago("PT1H").with("inspired-oxygen", "air");
    var started =
        withoutGas().ago("PT2H").with("inspired-oxygen", "air").ago("PT1H").with("oxygen-flow", 2);
    assertThat(weaned.total("news2")).isZero();
    assertThat(started.total("news2")).isEqualTo(2);
  }

  @Test
  void shouldTakeOxygenWhereTwoRecordsOfOneMomentDisagree() {
    assertThat(well().with("oxygen-flow", 2).total("news2")).isEqualTo(2);
    assertThat(withoutGas().with("inspired-oxygen", "oxygen").with("oxygen-flow", 0).total("news2"))
        .isEqualTo(2);
  }

  private static Bedside gcs(Bedside bedside, int eye, int verbal, int motor) {
    return bedside.with("gcs-eye", eye).with("gcs-verbal", verbal).with("gcs-motor", motor);
  }

  @Test
  void shouldReadFifteenAsAlert() {
    var patient = gcs(well().without("consciousness"), 4, 5, 6);
    assertThat(patient.total("news2")).isZero();
    assertThat(patient.scored("news2", "consciousness").derivedFrom())
        .isEqualTo("gcs-eye 4, gcs-verbal 5, gcs-motor 6");
  }

  /** McNarry and Goldhill 2004: medians only, the ranges overlap; so it is asked, not guessed. */
  @ParameterizedTest
  @CsvSource({"4,4,6", "3,5,6", "4,5,5", "1,1,1"})
  void shouldAskBelowFifteen(int eye, int verbal, int motor) {
    var score = gcs(well().without("consciousness"), eye, verbal, motor).score("news2");
    assertThat(score.missing()).containsExactly("consciousness");
    assertThat(score.low()).isEqualByComparingTo("0");
    assertThat(score.high()).isEqualByComparingTo("3");
    assertThat(score.riskIfWorst()).isEqualTo("low-medium");
  }

  @Test
  void shouldReadARecordedTotalAsTheParts() {
    var unspoken = well().without("consciousness");
    assertThat(unspoken.with("gcs-total", 15).total("news2")).isZero();
    assertThat(unspoken.with("gcs-total", 14).score("news2").missing())
        .containsExactly("consciousness");
    assertThat(unspoken.with("gcs-total", 14).points("qsofa", "mentation")).isEqualTo(1);
  }

  @Test
  void shouldDoubtAnOlderWordWhenTheScaleHasFallenSince() {
    var fallen = well().without("consciousness").ago("PT2H").with("consciousness", "alert");
    assertThat(fallen.total("news2")).isZero();
    assertThat(gcs(fallen, 4, 4, 6).score("news2").missing()).containsExactly("consciousness");
    assertThat(fallen.with("gcs-verbal", 4).score("news2").missing())
        .containsExactly("consciousness");
  }

  @Test
  void shouldBelieveTheWordOverTheScaleOfTheSameMoment() {
    assertThat(gcs(well(), 4, 4, 6).total("news2")).isZero();
  }

  @Test
  void shouldNotAddPartsOfDifferentExaminations() {
    var mixed =
        well()
            .without("consciousness")
            .ago("PT1H")
            .with("gcs-eye", 4)
            .with("gcs-verbal", 5)
            .with("gcs-motor", 6);
    assertThat(mixed.score("news2").missing()).containsExactly("consciousness");
  }

  @Test
  void shouldServeExactlyAsLongAsThePolicySays() {
    var edge = well().without("heart-rate").ago("PT12H").with("heart-rate", 95);
    var past = well().without("heart-rate").ago("PT12H0.001S").with("heart-rate", 95);
    assertThat(edge.total("news2")).isEqualTo(1);
    assertThat(past.score("news2").missing()).containsExactly("heart-rate");
    assertThat(past.score("news2").low()).isEqualByComparingTo("0");
    assertThat(past.score("news2").high()).isEqualByComparingTo("3");
  }

  @Test
  void shouldTakeTheDefinitionsTimeWhereThePolicySaysNothing() {
    var old = well().without("heart-rate").ago("PT12H").with("heart-rate", 95);
    var scores = Bedside.BOOK.score(old.picture(), old.subject(), code -> null);
    assertThat(scores.get(0).complete()).isTrue();
    var shorter = Bedside.BOOK.score(old.picture(), old.subject(), code -> Duration.ofHours(11));
    assertThat(shorter.get(0).missing()).containsExactly("heart-rate");
  }

  @Test
  void shouldNotScoreAForeignUnit() {
    var fahrenheit = well().without("temperature").in("temperature", "36.8", "[degF]");
    assertThat(fahrenheit.score("news2").missing()).containsExactly("temperature");
  }

  @Test
  void shouldNotOverflowOnAbsurdNumbers() {
    assertThat(well().with("heart-rate", "1e20").points("news2", "heart-rate")).isEqualTo(3);
    assertThat(well().with("heart-rate", "-1e20").points("news2", "heart-rate")).isEqualTo(3);
    assertThat(well().with("heart-rate", "1e-20").points("news2", "heart-rate")).isEqualTo(3);
  }
}
