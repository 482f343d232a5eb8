package org.driftward.alerts.core.outreach;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class SignatureTest {

  /** RFC 4231, section 4.3, test case 2. */
  @Test
  void shouldAgreeWithThePublishedVector() {
    var hmac =
        Signature.hmac("Jefe".getBytes(StandardCharsets.US_ASCII), "what do ya want for nothing?");

    assertThat(hmac).isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
  }

  /** Computed by {@code openssl dgst -sha256 -hmac} of OpenSSL 3, as docs/interfaces.md shows. */
  @Test
  void shouldAgreeWithAnIndependentProgram() {
    var signature = Signature.of("a-secret-of-at-least-32-characters", 1767582000, "{\"a\":1}");

    assertThat(signature)
        .isEqualTo("f43d3ffc1b944db25096e928f88a45589edb0ee44afd66ff83491c2438320f29");
  }
}
