package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.well;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every band edge of NEWS2 from both sides against the Royal College of Physicians' chart 1 (2017);
 * the oxygen scales also against Echevarria et al., Thorax 2019, table 1.
 */
class News2Test {

  @ParameterizedTest
  @CsvSource({"0,3", "8,3", "9,1", "11,1", "12,0", "20,0", "21,2", "24,2", "25,3", "100,3"})
  void shouldScoreTheRespirationRate(String rate, int points) {
    var set = well().with("respiratory-rate", rate);
    assertThat(set.total("news2")).isEqualTo(points);
    assertThat(set.points("news2", "respiratory-rate")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({"0,3", "91,3", "92,2", "93,2", "94,1", "95,1", "96,0", "100,0"})
  void shouldScoreSaturationOnScale1(String saturation, int points) {
    var set = well().with("oxygen-saturation", saturation);
    assertThat(set.total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({
    "0,3", "83,3", "84,2", "85,2", "86,1", "87,1", "88,0", "92,0", "93,0", "94,0", "95,0", "96,0",
    "97,0", "100,0"
  })
  void shouldScoreSaturationOnScale2OnAir(String saturation, int points) {
    var set = well().onScale(2).with("oxygen-saturation", saturation);
    assertThat(set.total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({
    "0,3", "83,3", "84,2", "85,2", "86,1", "87,1", "88,0", "92,0", "93,1", "94,1", "95,2", "96,2",
    "97,3", "100,3"
  })
  void shouldScoreSaturationOnScale2OnOxygen(String saturation, int points) {
    var set =
        well().onScale(2).with("inspired-oxygen", "oxygen").with("oxygen-saturation", saturation);
    assertThat(set.points("news2", "oxygen-saturation")).isEqualTo(points);
    assertThat(set.total("news2")).isEqualTo(points + 2);
  }

  @ParameterizedTest
  @CsvSource({"air,0", "oxygen,2"})
  void shouldScoreAirOrOxygen(String gas, int points) {
    assertThat(well().with("inspired-oxygen", gas).total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({"0,3", "90,3", "91,2", "100,2", "101,1", "110,1", "111,0", "219,0", "220,3", "300,3"})
  void shouldScoreTheSystolicPressure(String pressure, int points) {
    assertThat(well().with("systolic-pressure", pressure).total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({
    "0,3", "40,3", "41,1", "50,1", "51,0", "90,0", "91,1", "110,1", "111,2", "130,2", "131,3",
    "250,3"
  })
  void shouldScoreThePulse(String pulse, int points) {
    assertThat(well().with("heart-rate", pulse).total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({"alert,0", "confused,3", "voice,3", "pain,3", "unresponsive,3"})
  void shouldScoreConsciousness(String word, int points) {
    assertThat(well().with("consciousness", word).total("news2")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({
    "25,3", "35.0,3", "35.1,1", "36.0,1", "36.1,0", "38.0,0", "38.1,1", "39.0,1", "39.1,2", "42,2"
  })
  void shouldScoreTheTemperature(String temperature, int points) {
    assertThat(well().with("temperature", temperature).total("news2")).isEqualTo(points);
  }

  /** Rounding to the chart's resolution, half away from zero: engineering choice. */
  @ParameterizedTest
  @CsvSource({
    "temperature,38.04,0",
    "temperature,38.05,1",
    "temperature,35.04,3",
    "temperature,35.05,1",
    "temperature,39.05,2",
    "respiratory-rate,20.4,0",
    "respiratory-rate,20.5,2",
    "oxygen-saturation,91.4,3",
    "oxygen-saturation,91.6,2",
    "oxygen-saturation,95.5,0",
    "systolic-pressure,110.5,0",
    "heart-rate,90.5,1"
  })
  void shouldRoundOnceAndLeaveNothingBetweenTwoBands(String code, String value, int points) {
    assertThat(well().with(code, value).total("news2")).isEqualTo(points);
  }

  /** 100.4 F is 38.0 and 100.5 F is 38.0556 degrees Celsius: computed from the definition. */
  @ParameterizedTest
  @CsvSource({"38.0,0", "38.0556,1"})
  void shouldBandAConvertedTemperatureAfterOneRounding(String celsius, int points) {
    assertThat(well().with("temperature", celsius).total("news2")).isEqualTo(points);
  }

  /** Precedence of RCP chart 4: 7 beats 5, 5 beats a single 3, a single 3 beats 1 to 4. */
  @ParameterizedTest
  @CsvSource({
    "16, air, 120, 70, alert, 36.8, 0, low, 0",
    "16, oxygen, 120, 70, alert, 36.8, 2, low, 2",
    "9, air, 110, 91, alert, 36.8, 3, low, 1",
    "25, air, 120, 70, alert, 36.8, 3, low-medium, 3",
    "16, air, 120, 70, confused, 36.8, 3, low-medium, 3",
    "25, air, 110, 70, alert, 36.8, 4, low-medium, 3",
    "21, oxygen, 120, 70, alert, 36.8, 4, low, 2",
    "21, oxygen, 110, 70, alert, 36.8, 5, medium, 2",
    "25, oxygen, 120, 70, alert, 36.8, 5, medium, 3",
    "21, oxygen, 110, 91, alert, 36.8, 6, medium, 2",
    "25, oxygen, 110, 91, alert, 36.8, 7, high, 3",
    "21, oxygen, 100, 91, alert, 36.8, 7, high, 2",
  })
  void shouldClassRiskByPrecedence(
      int rate,
      String gas,
      int systolic,
      int pulse,
      String word,
      String t,
      int total,
      String risk,
      int single) {
    var score = Patients.set(rate, 97, gas, systolic, pulse, word, t).score("news2");
    assertThat(score.low().intValueExact()).isEqualTo(total);
    assertThat(score.risk()).isEqualTo(risk);
    assertThat(score.riskIfWorst()).isEqualTo(risk);
    assertThat(score.single()).isEqualTo(single);
  }

  @ParameterizedTest
  @CsvSource({"15,false", "16,true", "99,true"})
  void shouldNotServeChildren(int years, boolean serves) {
    assertThat(well().as(Subject.ofAge(years)).gives("news2")).isEqualTo(serves);
  }

  @Test
  void shouldNotServePregnancy() {
    assertThat(well().as(new Subject(30, 1, Set.of("pregnant"))).gives("news2")).isFalse();
  }

  /** An adult ward with no score at all is the greater harm: engineering choice. */
  @Test
  void shouldServeAPatientOfUnknownAge() {
    assertThat(well().as(new Subject(null, 1, Set.of())).total("news2")).isZero();
  }

  @Test
  void shouldLeadForAdults() {
    assertThat(well().scores().get(0).id()).isEqualTo("news2");
  }

  @Test
  void shouldExplainEveryPoint() {
    var scored = well().with("respiratory-rate", 22).scored("news2", "respiratory-rate");
    assertThat(scored.value().plain()).isEqualTo("22");
    assertThat(scored.unit()).isEqualTo("/min");
    assertThat(scored.points()).isEqualTo(2);
    assertThat(scored.band()).isEqualTo("21 to 24");
    assertThat(scored.row()).isEqualTo("Respiration rate");
    assertThat(scored.source()).contains("Royal College of Physicians").contains("chart 1");
    assertThat(scored.takenAt()).isEqualTo(Bedside.NOW);
    assertThat(scored.derivedFrom()).isNull();
  }

  @Test
  void shouldListTheInputsInTheOrderOfTheTable() {
    assertThat(well().score("news2").inputs())
        .extracting(scored -> scored.code())
        .containsExactly(
            "respiratory-rate",
            "oxygen-saturation",
            "inspired-oxygen",
            "systolic-pressure",
            "heart-rate",
            "consciousness",
            "temperature");
  }

  @Test
  void shouldNameTheOxygenScaleInTheRow() {
    assertThat(well().scored("news2", "oxygen-saturation").row()).isEqualTo("SpO2 scale 1");
    assertThat(well().onScale(2).scored("news2", "oxygen-saturation").row())
        .isEqualTo("SpO2 scale 2");
  }
}
