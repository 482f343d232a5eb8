package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Set;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.score.Thresholds.Around;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where the next point is earned: edges of Royal College of Physicians, NEWS2, 2017, chart 1. */
class ThresholdsTest {

  private static final Subject ADULT = Subject.ofAge(70);

  private final Thresholds thresholds = new Thresholds(Bedside.BOOK);

  private Around around(String code, String unit, String value, Subject subject) {
    var key = FindingKey.of(code);
    var quantity = new Quantity(new BigDecimal(value), unit);
    return thresholds.around(new Reading(key, quantity, Bedside.NOW, "a-1"), subject);
  }

  @ParameterizedTest
  @CsvSource({
    "heart-rate, /min, 70, 91, 50",
    "heart-rate, /min, 90, 91, 50",
    "heart-rate, /min, 95, 111, 40",
    "heart-rate, /min, 45, 111, 40",
    "heart-rate, /min, 120, 131, 40",
    "heart-rate, /min, 131, , ",
    "respiratory-rate, /min, 16, 21, 11",
    "respiratory-rate, /min, 22, 25, 8",
    "oxygen-saturation, %, 97, , 95",
    "oxygen-saturation, %, 92, , 91",
    "systolic-pressure, mm[Hg], 120, 220, 110",
    "systolic-pressure, mm[Hg], 95, 220, 90",
    "temperature, Cel, 37.0, 38.1, 36.0",
    "temperature, Cel, 38.5, 39.1, 35.0"
  })
  void shouldFindTheNearestCellThatCostsMore(
      String code, String unit, String value, @Nullable Double above, @Nullable Double below) {
    assertThat(around(code, unit, value, ADULT)).isEqualTo(new Around(above, below));
  }

  /**
   * Echevarria et al., Thorax 2019: on scale 2 a high saturation costs as well, on oxygen. Coming
   * down from there costs less, so the next cell below that costs more is 86 to 87.
   */
  @ParameterizedTest
  @CsvSource({"90, 93, 87", "93, 95, 87", "86, 95, 85", "95, 97, 87", "97, , 87", "80, , "})
  void shouldGoByTheOxygenScaleOfThePatient(
      String value, @Nullable Double above, @Nullable Double below) {
    assertThat(around("oxygen-saturation", "%", value, new Subject(70, 2, Set.of())))
        .isEqualTo(new Around(above, below));
  }

  /** Shields et al., AJOG 2016: over 110 and under 50. */
  @Test
  void shouldGoByTheScoreThatLeadsForThePatient() {
    var pregnant = new Subject(30, 1, Set.of("pregnant"));

    assertThat(around("heart-rate", "/min", "80", pregnant)).isEqualTo(new Around(111.0, 49.0));
  }

  @Test
  void shouldKnowNoneWithoutARowOrInAnotherUnit() {
    assertThat(around("body-weight", "kg", "70", ADULT)).isEqualTo(new Around(null, null));
    assertThat(around("temperature", "[degF]", "98", ADULT)).isEqualTo(new Around(null, null));
    var word = new Reading(FindingKey.of("consciousness"), new Coded("alert"), Bedside.NOW, "a-1");
    assertThat(thresholds.around(word, ADULT)).isEqualTo(new Around(null, null));
  }

  /** Chart 4: classes begin at 1, 5 and 7. */
  @ParameterizedTest
  @CsvSource({"0, 1, ", "1, 5, 1", "4, 5, 1", "5, 7, 5", "6, 7, 5", "7, , 7", "20, , 7"})
  void shouldFindTheClassesOfRiskAroundATotal(
      BigDecimal total, @Nullable Double above, @Nullable Double below) {
    assertThat(thresholds.around("news2", total)).isEqualTo(new Around(above, below));
  }

  @Test
  void shouldKnowNoClassOfAnUnknownScore() {
    assertThat(thresholds.around("none", BigDecimal.ONE)).isEqualTo(new Around(null, null));
  }
}
