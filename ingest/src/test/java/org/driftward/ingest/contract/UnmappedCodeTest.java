package org.driftward.ingest.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnmappedCodeTest {

  private static final int LONGEST = 255;

  @ParameterizedTest
  @NullSource
  @ValueSource(strings = {"", " ", "H\u0000F", "H\nF", "H\uD83D"})
  void shouldNotListWhatNobodyCouldMap(@Nullable String code) {
    assertThat(UnmappedCode.of("http/lab", "", code, "Heart rate", "/min")).isEmpty();
  }

  @Test
  void shouldListTheLongestCodeAndNoLongerOne() {
    assertThat(UnmappedCode.of("http/lab", "L", "x".repeat(LONGEST), null, null)).isPresent();
    assertThat(UnmappedCode.of("http/lab", "L", "x".repeat(LONGEST + 1), null, null)).isEmpty();
  }

  /** The code counts; what is said beside it may be anything. */
  @Test
  void shouldLeaveOutOddWordsBesideACode() {
    assertThat(UnmappedCode.of("http/lab", "L", "HF", "Heart\u0007", "x".repeat(100)))
        .contains(new UnmappedCode(new ForeignCode("http/lab", "L", "HF"), null, null));
    assertThat(UnmappedCode.of("http/lab", "L", "HF", "Heart \uD83D\uDC93", "/min"))
        .hasValueSatisfying(it -> assertThat(it.text()).isEqualTo("Heart \uD83D\uDC93"));
  }
}
