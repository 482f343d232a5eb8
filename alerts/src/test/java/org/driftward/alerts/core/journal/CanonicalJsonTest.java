package org.driftward.alerts.core.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

class CanonicalJsonTest {

  /** The string of the example in RFC 8785, section 3.2.2, and its canonical form in 3.2.3. */
  @Test
  void shouldEscapeAsRfc8785Shows() {
    var text = "\u20ac$\u000f\nA'B\"\\\\\"/";

    assertThat(CanonicalJson.write(List.of(text)))
        .isEqualTo("[\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"]");
  }

  @Test
  void shouldSortMembersAndLeaveOutAbsentOnes() {
    var members = new HashMap<String, Object>();
    members.put("b", 2);
    members.put("absent", null);
    members.put("a", Map.of("level", Level.HIGH, "value", new BigDecimal("37.50")));

    assertThat(CanonicalJson.write(members))
        .isEqualTo("{\"a\":{\"level\":\"high\",\"value\":37.5},\"b\":2}");
  }

  @Test
  void shouldRefuseWhatHasNoSingleForm() {
    assertThatThrownBy(() -> CanonicalJson.write(List.of(0.1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("Double");
  }
}
