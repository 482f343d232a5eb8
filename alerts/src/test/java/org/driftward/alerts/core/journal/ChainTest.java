package org.driftward.alerts.core.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

/** The hashes, against values computed with another library: Python 3, json and hashlib. */
class ChainTest {

  private static final Line LINE =
      new Line("policy/escalation", "adopted", "driftward", "{\"version\":\"1\"}");
  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00.123456Z");

  @Test
  void shouldHashAsAnotherLibraryDoes() {
    var first = Chain.START.next(LINE, NOW);
    var second = Chain.START.after(first).next(LINE, NOW);

    assertThat(first.at()).isEqualTo("2026-01-05T03:00:00.123Z");
    assertThat(first.hash())
        .isEqualTo("56de0067a93b57d531571984f7e6c67de7032ae9f66601a588d63812c790bec5");
    assertThat(second.previous()).isEqualTo(first.hash());
    assertThat(second.hash())
        .isEqualTo("cecd7be5baa58817ac85fa5dcbd22835bcc9e33f2ba07027f90a77788b26d637");
  }

  @Test
  void shouldFindAnEmptyJournalSound() {
    assertThat(new ChainCheck().finish(Chain.START).sound()).isTrue();
  }
}
