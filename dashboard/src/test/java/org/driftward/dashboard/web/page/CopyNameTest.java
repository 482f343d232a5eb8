package org.driftward.dashboard.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CopyNameTest {

  /** NAME_MAX of Linux, from memory; ".next" comes behind while it is written. */
  private static final int LONGEST = 255 - ".next".length();

  @Test
  void shouldLeaveAnOrdinaryNameAsItIs() {
    assertThat(CopyName.of("heron")).isEqualTo("heron.html");
    assertThat(CopyName.of("W1-North")).isEqualTo("W1-North.html");
  }

  @ParameterizedTest
  @ValueSource(strings = {"..", "", "a/b", "a\\b", "a b", "a\u0000b", "\u5e9c", "CON/..", "a\nb"})
  void shouldMakeAnyOtherHarmlessAndStillTellItApart(String ward) {
    assertThat(CopyName.of(ward)).matches("[A-Za-z0-9_-]*_[0-9a-f]{16}[.]html");
    assertThat(CopyName.of(ward)).isNotEqualTo(CopyName.of(ward + "/"));
  }

  @Test
  void shouldBoundTheLength() {
    assertThat(CopyName.of("/".repeat(10_000)).length()).isLessThan(LONGEST);
    assertThat(CopyName.of("a".repeat(300))).isNotEqualTo(CopyName.of("a".repeat(301)));
  }
}
