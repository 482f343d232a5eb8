package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Editions.UnknownEditionException;
import org.junit.jupiter.api.Test;

/** A policy or a score takes effect from a stated clinical time; what was taken before stays. */
class EditionsTest {

  private static final double HOUR_OF_EFFECT = 5;
  private static final double ONE_MILLISECOND = 1.0 / 3_600_000;

  private static final Edition SECOND = Fixtures.edition(80, "second", Course.hour(HOUR_OF_EFFECT));

  private final Course course = new Course(Fixtures.timeline());

  private static Finding pulse(int rate) {
    return Finding.quantity("heart-rate", Integer.toString(rate), "/min");
  }

  private static String versionOf(Snapshot snapshot, String score) {
    return snapshot.scores().stream()
        .filter(one -> one.id().equals(score))
        .map(Score::version)
        .findFirst()
        .orElse("none");
  }

  @Test
  void shouldJudgeByTheEditionOfTheClinicalTime() {
    course.adopt(SECOND);
    course.observe("A-before", HOUR_OF_EFFECT - ONE_MILLISECOND, pulse(85));
    course.observe("A-at", HOUR_OF_EFFECT, pulse(85));

    assertThat(course.of("A-before").policy()).isEqualTo("shipped-1");
    assertThat(versionOf(course.of("A-before"), "pulse")).isEqualTo("none");
    assertThat(course.of("A-at").policy()).isEqualTo("second");
    assertThat(versionOf(course.of("A-at"), "pulse")).isEqualTo("second");
    assertThat(versionOf(course.of("A-at"), "news2")).isEqualTo("2017.1");
  }

  @Test
  void shouldJudgeALateEntryByTheEditionOfItsOwnTime() {
    course.adopt(SECOND);
    course.observe("A-late", HOUR_OF_EFFECT + 1, pulse(85));
    course.observe("A-early", HOUR_OF_EFFECT - 1, pulse(85));

    assertThat(course.of("A-early").policy()).isEqualTo("shipped-1");
  }

  @Test
  void shouldSayAgainWhatWasTakenSinceTheTimeOfEffectAndNothingElse() {
    for (int hour = 1; hour <= 8; hour++) {
      course.observe("A-" + hour, hour, pulse(85));
    }
    course.adopt(SECOND).catchUp();

    assertThat(course.of("A-4").policy()).isEqualTo("shipped-1");
    assertThat(course.of("A-5").policy()).isEqualTo("second");
    assertThat(course.latest().policy()).isEqualTo("second");
    assertThat(course.sent()).isEqualTo(8 + 4);
  }

  @Test
  void shouldSayNothingOfAnEditionThatHasYetToTakeEffect() {
    course.observe("A-1", 1, pulse(85)).adopt(SECOND).catchUp();
    assertThat(course.sent()).isEqualTo(1);

    course.observe("A-6", 6, pulse(85));
    assertThat(course.latest().policy()).isEqualTo("second");
  }

  @Test
  void shouldLetTheLaterAdoptionRuleFromItsOwnTime() {
    course.adopt(SECOND).adopt(Fixtures.edition(90, "third", Course.hour(3)));
    for (int hour = 2; hour <= 6; hour += 2) {
      course.observe("A-" + hour, hour, pulse(85));
    }

    assertThat(course.of("A-2").policy()).isEqualTo("shipped-1");
    assertThat(course.of("A-4").policy()).isEqualTo("third");
    assertThat(course.of("A-6").policy()).isEqualTo("third");
  }

  /** The baseline that began under one edition serves under the next. */
  @Test
  void shouldGoOnWithTheHistoryAcrossTheTimeOfEffect() {
    course.adopt(SECOND);
    for (int hour = 0; hour < 8; hour++) {
      course.observe("A-" + hour, hour, pulse(70));
    }

    var drift = course.latest().drift().get(0);
    assertThat(drift.from()).isEqualTo(Course.hour(0));
    assertThat(drift.sets()).isEqualTo(7);
  }

  @Test
  void shouldRefuseAVersionThatIsTaken() {
    var editions = Fixtures.timeline().editions();

    assertThatThrownBy(() -> editions.with(Fixtures.edition(80, "shipped-1", Course.START)))
        .hasMessageContaining("shipped-1");
    assertThatThrownBy(() -> editions.with(SECOND).with(SECOND)).hasMessageContaining("second");
  }

  /** Another process has adopted it first; here the record has to wait. */
  @Test
  void shouldNotJudgeAnEncounterByAnEditionNotHeardOfYet() {
    var editions = Fixtures.timeline().editions();

    assertThatThrownBy(() -> editions.rules(editions.with(SECOND).versions()))
        .isInstanceOf(UnknownEditionException.class)
        .hasMessageContaining("second");
  }
}
