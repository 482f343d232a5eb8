package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.driftward.scoring.core.timeline.Course.Plan;
import org.junit.jupiter.api.Test;

/** Which scores apply goes by the care plan of the time. */
class PopulationTest {

  private static final Plan PREGNANT = new Plan(1, List.of("pregnant"), null);

  private static List<String> scores(Snapshot snapshot) {
    return snapshot.scores().stream().map(Score::id).toList();
  }

  private static Course observed() {
    var pulse = Finding.quantity("heart-rate", "90", "/min");
    return new Course(Fixtures.timeline()).observe("A-early", 1, pulse).observe("A-late", 3, pulse);
  }

  /** NEWS2 is not for pregnancy: RCP 2017, as the archetype and several copies print it. */
  @Test
  void shouldScoreByTheMaternalTableFromWhenThePlanSaysSo() {
    var course = observed().sign(2, PREGNANT);

    assertThat(scores(course.of("A-early"))).contains("news2").doesNotContain("maternal-trigger");
    assertThat(scores(course.of("A-late"))).startsWith("maternal-trigger").doesNotContain("news2");
  }

  /** Local policy, no source: nobody stops being pregnant because a plan ran out. */
  @Test
  void shouldGoOnScoringByTheMaternalTableWhenThePlanHasEndedButTheFactStands() {
    var fact =
        new StandingFact(
            Fact.POPULATIONS, "30 weeks", "doctor", Course.hour(2), Course.hour(2 + 7 * 24));
    var pulse = Finding.quantity("heart-rate", "90", "/min");

    var lapsed = observed().sign(2, PREGNANT).observe("A-after", 80, pulse);
    var standing = observed().sign(2, PREGNANT, List.of(fact)).observe("A-after", 80, pulse);

    assertThat(scores(lapsed.of("A-after"))).startsWith("news2");
    assertThat(scores(standing.of("A-after")))
        .startsWith("maternal-trigger")
        .doesNotContain("news2");
  }

  @Test
  void shouldGoBackToTheAdultScoresWithThePlanThatSaysNoMore() {
    var course = observed().sign(2, PREGNANT).sign(2.5, Plan.PLAIN);

    assertThat(scores(course.latest())).startsWith("news2").doesNotContain("maternal-trigger");
  }
}
