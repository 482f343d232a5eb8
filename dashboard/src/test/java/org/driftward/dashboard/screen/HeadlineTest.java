package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadlineTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          NEWS2 9 at 10:53 (7 or more): respiratory rate 25 /min scores 3 | NEWS2 9 at 10:53 (7 or more)
          No set since 08:53; the next was due at 09:53                   | No set since 08:53
          Brain: Consciousness: confused, usually alert, since 12:17; Strength arm left: 2 | Brain: Consciousness: confused, usually alert, since 12:17
          Heart rate 95 /min at 11:47 has crept up from the usual 83: accumulated drift 5 | Heart rate 95 /min at 11:47 has crept up from the usual 83
          NEWS2 3 at 10:53, 3 above this patient's usual 0                | NEWS2 3 at 10:53, 3 above this patient's usual 0
          """)
  void shouldEndWhereTheReasonBeginsToExplainItself(String words, String headline) {
    assertThat(Headline.of(words)).isEqualTo(headline);
  }
}
