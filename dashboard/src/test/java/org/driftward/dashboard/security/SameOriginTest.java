package org.driftward.dashboard.security;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a browser says of a request: W3C Fetch Metadata and RFC 6454, values from memory. */
class SameOriginTest {

  private static final String HOST = "ward.example:8080";

  @ParameterizedTest
  @CsvSource({
    "same-origin, true",
    "none, true",
    "same-site, false",
    "cross-site, false",
    "anything-else, false"
  })
  void shouldBelieveFetchMetadata(String site, boolean allowed) {
    assertThat(post(site, "http://" + HOST, true, true).allowed()).isEqualTo(allowed);
  }

  @ParameterizedTest
  @CsvSource({
    "http://ward.example:8080, true",
    "https://WARD.example:8080, true",
    "http://ward.example, false",
    "http://ward.example:8080.evil.example, false",
    "http://evil.example, false",
    "null, false"
  })
  void shouldCompareTheOriginWithTheHost(String origin, boolean allowed) {
    assertThat(post(null, origin, true, true).allowed()).isEqualTo(allowed);
  }

  @Test
  void shouldExemptProgramsWithoutASession() {
    assertThat(post(null, null, false, false).allowed()).isTrue();
  }

  @Test
  void shouldAskWhoSendsTheSessionAloneForItsOwnHeader() {
    assertThat(post(null, null, true, false).allowed()).isFalse();
    assertThat(post(null, null, true, true).allowed()).isTrue();
  }

  @Test
  void shouldLetReadingPass() {
    assertThat(new SameOrigin("GET", "cross-site", null, HOST, true, false).allowed()).isTrue();
    assertThat(new SameOrigin("DELETE", "cross-site", null, HOST, true, false).allowed()).isFalse();
  }

  private static SameOrigin post(
      @Nullable String site, @Nullable String origin, boolean session, boolean ownHeader) {
    return new SameOrigin("POST", site, origin, HOST, session, ownHeader);
  }
}
