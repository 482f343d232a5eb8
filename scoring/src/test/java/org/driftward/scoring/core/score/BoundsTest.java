package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.well;

import org.driftward.scoring.contract.Score;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Missing is not normal: what an incomplete set still says. Numbers computed from the chart. */
class BoundsTest {

  private static void assertBounds(Score score, int low, int high) {
    assertThat(score.low()).isEqualByComparingTo(Integer.toString(low));
    assertThat(score.high()).isEqualByComparingTo(Integer.toString(high));
  }

  /** 0 to 20 is the range that Clinical Medicine's definition of NEWS2 gives. */
  @Test
  void shouldSpanTheWholeScoreWhenNothingIsKnown() {
    var score = Bedside.adult().score("news2");
    assertBounds(score, 0, 20);
    assertThat(score.complete()).isFalse();
    assertThat(score.risk()).isEqualTo("low");
    assertThat(score.riskIfWorst()).isEqualTo("high");
    assertThat(score.inputs()).isEmpty();
    assertThat(score.missing())
        .containsExactly(
            "respiratory-rate",
            "oxygen-saturation",
            "inspired-oxygen",
            "systolic-pressure",
            "heart-rate",
            "consciousness",
            "temperature");
  }

  @ParameterizedTest
  @CsvSource({
    "respiratory-rate,3",
    "oxygen-saturation,3",
    "inspired-oxygen,2",
    "systolic-pressure,3",
    "heart-rate,3",
    "consciousness,3",
    "temperature,3"
  })
  void shouldLeaveOpenWhatOneMissingInputMayEarn(String missing, int most) {
    var score = well().without(missing).score("news2");
    assertBounds(score, 0, most);
    assertThat(score.missing()).containsExactly(missing);
    assertThat(score.single()).isZero();
    assertThat(score.riskIfWorst()).isEqualTo(most == 3 ? "low-medium" : "low");
  }

  /** On scale 2 unknown oxygen decides two rows at once: 95 % is 0 on air or 2 + 2 on oxygen. */
  @ParameterizedTest
  @CsvSource({"83,3,5", "87,1,3", "88,0,2", "92,0,2", "93,0,3", "95,0,4", "97,0,5"})
  void shouldTieSaturationToOxygenOnScale2(int saturation, int low, int high) {
    var patient =
        well().onScale(2).with("oxygen-saturation", saturation).without("inspired-oxygen");
    assertBounds(patient.score("news2"), low, high);
  }

  /** Unknown saturation on oxygen, scale 2: two points for oxygen, 0 to 3 for the saturation. */
  @Test
  void shouldTieOxygenToSaturationOnScale2() {
    var set = well().onScale(2).without("oxygen-saturation");
    assertBounds(set.with("inspired-oxygen", "oxygen").score("news2"), 2, 5);
    assertBounds(set.score("news2"), 0, 3);
    assertBounds(set.without("inspired-oxygen").score("news2"), 0, 5);
  }

  @Test
  void shouldExplainAnUnsettledRowByWhatItEarnsAtLeast() {
    var scored =
        well()
            .onScale(2)
            .with("oxygen-saturation", 95)
            .without("inspired-oxygen")
            .scored("news2", "oxygen-saturation");
    assertThat(scored.points()).isZero();
    assertThat(scored.band()).isEqualTo("93 or more on air or 95 to 96 on oxygen");
  }

  @Test
  void shouldCountTheKnownPartOfAnIncompleteSet() {
    var score = well().with("respiratory-rate", 26).without("temperature").score("news2");
    assertBounds(score, 3, 6);
    assertThat(score.single()).isEqualTo(3);
    assertThat(score.risk()).isEqualTo("low-medium");
    assertThat(score.riskIfWorst()).isEqualTo("medium");
  }

  @Test
  void shouldLeaveTheUsualLevelToTheTimeline() {
    assertThat(well().score("news2").usual()).isNull();
  }
}
