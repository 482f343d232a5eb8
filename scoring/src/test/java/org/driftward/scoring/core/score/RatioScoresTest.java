package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shock index, modified shock index and ROX. Vectors computed from the formulas unless marked. */
class RatioScoresTest {

  /**
   * Koch et al. 2019 and Liu et al. 2012 for the formulas. Published worked examples: 83/50 has a
   * mean of 61; a pulse of 120 at 80 systolic is 1.5. Pulse, systolic, diastolic.
   */
  @ParameterizedTest
  @CsvSource({
    "70,120,80,0.5833,usual,0.7500,usual", "110,83,50,1.3253,high,1.8033,high",
    "120,90,50,1.3333,high,1.8947,high", "99,110,70,0.9000,above-usual,1.1880,usual",
    "60,200,90,0.3000,below-usual,0.4737,below-usual", "120,80,60,1.5000,high,1.8000,high"
  })
  void shouldDividePulseByPressure(
      int pulse,
      int systolic,
      int diastolic,
      String index,
      String risk,
      String modified,
      String modifiedRisk) {
    var patient =
        Bedside.adult()
            .with("heart-rate", pulse)
            .with("systolic-pressure", systolic)
            .with("diastolic-pressure", diastolic);
    assertThat(patient.score("shock-index").low()).isEqualTo(index);
    assertThat(patient.score("shock-index").high()).isEqualTo(index);
    assertThat(patient.score("shock-index").risk()).isEqualTo(risk);
    assertThat(patient.score("modified-shock-index").low()).isEqualTo(modified);
    assertThat(patient.score("modified-shock-index").risk()).isEqualTo(modifiedRisk);
  }

  /** Classes are strict where the literature says "above": 0.9 itself is not above 0.9. */
  @ParameterizedTest
  @CsvSource({
    "49,100,below-usual",
    "50,100,usual",
    "70,100,usual",
    "71,100,above-usual",
    "90,100,above-usual",
    "91,100,raised",
    "100,100,raised",
    "101,100,high",
    "180,199.99,raised"
  })
  void shouldClassTheShockIndexOnTheUnroundedQuotient(String pulse, String systolic, String risk) {
    var patient = Bedside.adult().with("heart-rate", pulse).with("systolic-pressure", systolic);
    assertThat(patient.score("shock-index").risk()).isEqualTo(risk);
  }

  /** Hamade et al. 2023: above 1.7; 0.7 and 1.3 are from memory. At 100/100 the mean is 100. */
  @ParameterizedTest
  @CsvSource({"69,below-usual", "70,usual", "130,usual", "131,raised", "170,raised", "171,high"})
  void shouldClassTheModifiedShockIndex(int pulse, String risk) {
    var patient =
        Bedside.adult()
            .with("heart-rate", pulse)
            .with("systolic-pressure", 100)
            .with("diastolic-pressure", 100);
    assertThat(patient.score("modified-shock-index").risk()).isEqualTo(risk);
  }

  private static Bedside onHighFlow(String saturation, String concentration, String respiration) {
    return Bedside.adult()
        .with("oxygen-saturation", saturation)
        .with("inspired-oxygen-fraction", concentration)
        .with("respiratory-rate", respiration);
  }

  /** Roca et al. 2019 for the formula and cut-offs; the concentration is recorded in per cent. */
  @ParameterizedTest
  @CsvSource({
    "94,50,28,6.7143,low",
    "90,60,35,4.2857,indeterminate",
    "92,80,30,3.8333,raised",
    "97,40,20,12.1250,low",
    "88,100,30,2.9333,raised"
  })
  void shouldComputeRox(
      String saturation, String concentration, String respiration, String index, String risk) {
    var score = onHighFlow(saturation, concentration, respiration).score("rox");
    assertThat(score.low()).isEqualTo(index);
    assertThat(score.risk()).isEqualTo(risk);
  }

  /** Edges of Roca et al. 2019, from both sides: 2.85 and 3.85 are below, 4.88 is at or above. */
  @ParameterizedTest
  @CsvSource({
    "28.49,high",
    "28.5,raised",
    "38.49,raised",
    "38.5,indeterminate",
    "48.79,indeterminate",
    "48.8,low"
  })
  void shouldClassRoxByTheCutOffs(String saturation, String risk) {
    assertThat(onHighFlow(saturation, "100", "10").score("rox").risk()).isEqualTo(risk);
  }

  @Test
  void shouldLeaveOutARatioWithAnInputMissing() {
    assertThat(Bedside.adult().with("heart-rate", 110).gives("shock-index")).isFalse();
    assertThat(onHighFlow("92", "60", "30").without("inspired-oxygen-fraction").gives("rox"))
        .isFalse();
  }

  @Test
  void shouldLeaveOutARatioOverZero() {
    var pulseless = Bedside.adult().with("heart-rate", 110).with("systolic-pressure", 0);
    assertThat(pulseless.gives("shock-index")).isFalse();
    assertThat(pulseless.points("news2", "systolic-pressure")).isEqualTo(3);
  }

  @Test
  void shouldShowWhatARatioWasMadeOf() {
    var score = onHighFlow("92", "80", "30").score("rox");
    assertThat(score.inputs())
        .extracting(scored -> scored.code() + " " + scored.value().plain())
        .containsExactly(
            "oxygen-saturation 92", "inspired-oxygen-fraction 80", "respiratory-rate 30");
  }
}
