package org.driftward.deploy.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class CourseTest {

  private static final Course COURSE =
      Course.of(
          """
          -2:00 1:00 10 96 air 120/70 60 alert 37.0
           0:00 0:40 20 96 air 120/70 60 alert 37.0
           1:30 1:00 30 96 2   120/70 60 voice 37.0
           3:00 1:00 20 96 air 120/70 60 alert 37.0
          """);

  @Test
  void shouldTakeASetAtEveryMomentAndEveryIntervalBetween() {
    assertThat(COURSE.sets(Duration.ofHours(-3), Duration.ofMinutes(179)))
        .extracting(set -> set.at().toMinutes())
        .containsExactly(-120L, -60L, 0L, 40L, 80L, 90L, 150L);
  }

  @Test
  void shouldGoStraightFromOneMomentToTheNext() {
    assertThat(COURSE.sets(Duration.ofMinutes(-61), Duration.ofMinutes(-60)))
        .singleElement()
        .satisfies(set -> assertThat(set.truth().respiration()).isEqualTo(15));
  }

  @Test
  void shouldKeepConsciousnessUntilTheNextMoment() {
    assertThat(COURSE.sets(Duration.ofMinutes(40), Duration.ofMinutes(90)))
        .extracting(set -> set.truth().consciousness())
        .containsExactly("alert", "voice");
  }

  @Test
  void shouldBeginTheLivePartAgainAfterItsEnd() {
    assertThat(COURSE.sets(Duration.ofMinutes(150), Duration.ofMinutes(220)))
        .extracting(set -> set.at().toMinutes())
        .containsExactly(180L, 220L);
  }

  @Test
  void shouldGiveTheSameSetsHoweverTheTimeIsCutUp() {
    var whole = COURSE.sets(Duration.ofHours(-3), Duration.ofHours(9));
    var pieces = new java.util.ArrayList<Course.PlannedSet>();
    for (int hour = -3; hour < 9; hour++) {
      pieces.addAll(COURSE.sets(Duration.ofHours(hour), Duration.ofHours(hour + 1L)));
    }
    assertThat(pieces).isEqualTo(whole);
  }
}
