package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The four questions of a charge nurse: what must get done, docs and design, "who uses it". */
class BoardScreenTest {

  private final BoardScreen screen = BoardScreen.of(Sample.board(), Sample.CHARGE, Sample.ZONE);

  @Test
  void shouldAnswerWhoNeedsSomebodyNow() {
    // 7 has an owner, whose clock ran out three minutes ago.
    assertThat(beds("now")).containsExactly("4", "7", "2");
  }

  @Test
  void shouldAnswerWhoIsSliding() {
    assertThat(beds("sliding")).containsExactly("4", "11", "9");
  }

  @Test
  void shouldAnswerWhoIsOverdue() {
    assertThat(beds("overdue")).containsExactly("4", "2", "15");
  }

  @Test
  void shouldAnswerWhatIsInHand() {
    assertThat(beds("owned")).containsExactly("11");
  }

  @Test
  void shouldGiveALineToWhoeverAsksForAttention() {
    assertThat(screen.concerned())
        .extracting(PatientLine::bed)
        .containsExactly("4", "7", "2", "11", "9", "15", "20");
    assertThat(screen.quiet()).hasSize(13);
    assertThat(screen.inWords()).isEqualTo("7 of 20 patients ask for attention");
  }

  private List<String> beds(String question) {
    return screen.answers().stream()
        .filter(answer -> answer.css().equals(question))
        .flatMap(answer -> answer.patients().stream())
        .map(PatientLine::bed)
        .toList();
  }
}
