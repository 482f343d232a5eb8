package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NEWS2 against the Royal College of Physicians' chart 1 (2017); scale 2 also against Echevarria et
 * al., Thorax 2019, table 1.
 */
class News2Test {

  /** A complete set that scores 0. */
  static Bedside well() {
    return Bedside.adult()
        .with("respiratory-rate", 16)
        .with("oxygen-saturation", 97)
        .with("inspired-oxygen", "air")
        .with("systolic-pressure", 120)
        .with("heart-rate", 70)
        .with("consciousness", "alert")
        .with("temperature", "36.8");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 3", "8, 3", "9, 1", "11, 1", "12, 0", "20, 0", "21, 2", "24, 2", "25, 3", "60, 3",
  })
  void shouldScoreEveryEdgeOfTheRespirationRate(String rate, int points) {
    assertThat(well().with("respiratory-rate", rate).total("news2")).isEqualTo(points);
  }
}
