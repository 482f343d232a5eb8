package org.driftward.scoring.definition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.ScoreGuide;
import org.junit.jupiter.api.Test;

/** What other modules may tell people about the scores in force. */
class ScoreGuideTest {

  @Test
  void shouldSayWhatEveryClassOfTheLeadingScoreMeans() {
    var news2 = ScoreGuide.inForce(List.of(), Catalogue.shipped()).get(0);
    assertThat(news2.id()).isEqualTo("news2");
    assertThat(news2.risks())
        .extracting(risk -> risk.id() + ": " + risk.when())
        .containsExactly(
            "high: 7 or more",
            "medium: 5 or more",
            "low-medium: 3 or more in one row",
            "low: 1 or more",
            "low: otherwise");
    assertThat(news2.notFor()).contains("Pregnancy");
  }
}
