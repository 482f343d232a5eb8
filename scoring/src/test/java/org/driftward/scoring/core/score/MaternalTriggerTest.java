package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.pregnant;
import static org.driftward.scoring.core.score.Patients.well;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shields et al., AJOG 2016: any one severe or any two non-severe triggers. Severe counts 2. */
class MaternalTriggerTest {

  @ParameterizedTest
  @CsvSource({
    "heart-rate,49,1",
    "heart-rate,50,0",
    "heart-rate,110,0",
    "heart-rate,111,1",
    "heart-rate,130,1",
    "heart-rate,131,2",
    "respiratory-rate,9,1",
    "respiratory-rate,10,0",
    "respiratory-rate,24,0",
    "respiratory-rate,25,1",
    "respiratory-rate,30,1",
    "respiratory-rate,31,2",
    "oxygen-saturation,89,2",
    "oxygen-saturation,90,1",
    "oxygen-saturation,92,1",
    "oxygen-saturation,93,0",
    "temperature,35.9,1",
    "temperature,36.0,0",
    "temperature,38.0,0",
    "temperature,38.1,1",
    "systolic-pressure,84,1",
    "systolic-pressure,85,0",
    "systolic-pressure,160,0",
    "systolic-pressure,161,1",
    "diastolic-pressure,110,0",
    "diastolic-pressure,111,1",
    "fetal-heart-rate,160,0",
    "fetal-heart-rate,161,1",
    "staff-concern,none,0",
    "staff-concern,worried,2",
    "consciousness,alert,0",
    "consciousness,confused,1",
    "consciousness,unresponsive,1",
    "pain-out-of-proportion,absent,0",
    "pain-out-of-proportion,present,1"
  })
  void shouldCountEveryTriggerAtItsEdge(String code, String value, int points) {
    var score = pregnant().with(code, value);
    assertThat(score.total("maternal-trigger")).isEqualTo(points);
  }

  /** Mean below 55, and diastolic below 45: 75/45 has a mean of 55, 74/45 of 54.67. */
  @ParameterizedTest
  @CsvSource({
    "120,45,0,0",
    "120,44,0,1",
    "75,45,0,1",
    "74,45,2,3",
    "75,44.9,2,3",
    "120,22,2,3",
    "120,23,0,1"
  })
  void shouldComputeTheMeanPressureExactly(String systolic, String diastolic, int mean, int total) {
    var patient =
        pregnant().with("systolic-pressure", systolic).with("diastolic-pressure", diastolic);
    assertThat(patient.points("maternal-trigger", "mean-pressure")).isEqualTo(mean);
    assertThat(patient.total("maternal-trigger")).isEqualTo(total);
  }

  @Test
  void shouldCountTheBloodPressureOnce() {
    var patient = pregnant().with("systolic-pressure", 170).with("diastolic-pressure", 115);
    assertThat(patient.total("maternal-trigger")).isEqualTo(1);
    assertThat(patient.score("maternal-trigger").risk()).isEqualTo("one-non-severe");
  }

  @ParameterizedTest
  @CsvSource({
    "70,14,36.8,none",
    "115,14,36.8,one-non-severe",
    "115,26,36.8,triggered",
    "135,14,36.8,triggered",
    "115,26,38.5,triggered"
  })
  void shouldTriggerOnOneSevereOrTwoOthers(int pulse, int respiration, String t, String risk) {
    var patient =
        pregnant()
            .with("heart-rate", pulse)
            .with("respiratory-rate", respiration)
            .with("temperature", t);
    assertThat(patient.score("maternal-trigger").risk()).isEqualTo(risk);
  }

  @Test
  void shouldTriggerThoughOtherInputsAreMissing() {
    var score =
        pregnant()
            .with("heart-rate", 135)
            .without("fetal-heart-rate")
            .without("diastolic-pressure")
            .score("maternal-trigger");
    assertThat(score.risk()).isEqualTo("triggered");
    assertThat(score.missing()).containsExactly("diastolic-pressure", "fetal-heart-rate");
  }

  @Test
  void shouldLeadInPregnancyAndServeNobodyElse() {
    assertThat(pregnant().scores().get(0).id()).isEqualTo("maternal-trigger");
    assertThat(pregnant().gives("news2")).isFalse();
    assertThat(well().gives("maternal-trigger")).isFalse();
  }
}
