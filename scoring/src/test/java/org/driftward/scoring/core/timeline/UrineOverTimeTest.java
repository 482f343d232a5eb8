package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Score;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * KDIGO 2012, table 2, from volumes with the hours they came in, each recorded in an assessment of
 * its own; vectors computed for 70 kg.
 */
class UrineOverTimeTest {

  private static Course weighed() {
    return new Course(Fixtures.timeline()).observe(0, Finding.quantity("body-weight", "70", "kg"));
  }

  private static Finding[] collected(String millilitres, int hours) {
    return new Finding[] {
      Finding.quantity("urine-output", millilitres, "mL"),
      Finding.quantity("urine-output-period", Integer.toString(hours), "h")
    };
  }

  private static Optional<Score> stage(Course course) {
    return course.latest().scores().stream()
        .filter(score -> score.id().equals("kdigo-urine"))
        .findFirst();
  }

  @ParameterizedTest
  @CsvSource({"6,209,1", "6,210,0", "12,419,2", "12,420,0", "12,0,3", "24,503,3", "24,504,2"})
  void shouldStageOneCollection(int hours, String millilitres, int stage) {
    var score = stage(weighed().observe(30, collected(millilitres, hours))).orElseThrow();
    assertThat(score.low()).isEqualByComparingTo(Integer.toString(stage));
  }

  @ParameterizedTest
  @CsvSource({"210,209,2", "210,210,0", "0,0,3"})
  void shouldJoinTwoCollectionsByTheirHours(String first, String second, int stage) {
    var course = weighed().observe(24, collected(first, 6)).observe(30, collected(second, 6));
    assertThat(stage(course).orElseThrow().low()).isEqualByComparingTo(Integer.toString(stage));
  }

  @Test
  void shouldStageADayOfFourCollectionsAndSettleIt() {
    var course = weighed();
    for (int hour = 6; hour <= 24; hour += 6) {
      course.observe(hour, collected("125", 6));
    }
    // 500 mL in 24 hours is 0.2976 mL/kg/h.
    var score = stage(course).orElseThrow();
    assertThat(score.complete()).isTrue();
    assertThat(score.risk()).isEqualTo("stage-3");
  }

  @Test
  void shouldNotTakeForAnHourWhatCameInSix() {
    var course = weighed().observe(24, collected("209", 6)).observe(25, collected("35", 1));
    // 244 mL in the 7 hours that the two cover is 0.4980 mL/kg/h.
    assertThat(stage(course).orElseThrow().low()).isEqualByComparingTo("1");
  }

  @Test
  void shouldNotStageAcrossAGapBetweenCollections() {
    var course = weighed().observe(20, collected("0", 6)).observe(30, collected("0", 6));
    assertThat(stage(course).orElseThrow().low()).isEqualByComparingTo("1");
  }

  @Test
  void shouldStageAgainWhenAnEarlierCollectionComesLate() {
    var course = weighed().observe(30, collected("209", 6));
    course.observe("A-late", 24, collected("210", 6));
    assertThat(stage(course).orElseThrow().low()).isEqualByComparingTo("2");
  }
}
