package org.driftward.ingest.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class RedactedTest {

  @Test
  void shouldShowTypesAndPlacesButNoMessage() {
    var cause = new IllegalArgumentException("patient P-secret has 999");
    var printed = new StringWriter();

    Redacted.of(new IllegalStateException("P-secret", cause))
        .printStackTrace(new PrintWriter(printed));

    assertThat(printed.toString())
        .doesNotContain("P-secret")
        .contains("IllegalStateException", "IllegalArgumentException", "RedactedTest.java");
  }
}
