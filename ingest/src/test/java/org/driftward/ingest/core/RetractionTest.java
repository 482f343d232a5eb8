package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RetractionTest {

  @Test
  void shouldTakeARetractionWithoutFindings() {
    var request = Request.with("\"revision\":2,\"status\":\"retracted\",\"reason\":\"wrong bed\"");

    assertThat(request.broken()).isEmpty();
    assertThat(request.assessments().get(0).retracted()).isTrue();
  }

  @Test
  void shouldRefuseARetractionWithoutAReason() {
    assertThat(Request.with("\"revision\":2,\"status\":\"retracted\"").broken())
        .containsExactly("/reason no-reason");
  }

  @Test
  void shouldRefuseARetractionThatRetractsNoEarlierRevision() {
    assertThat(Request.with("\"status\":\"retracted\",\"reason\":\"wrong bed\"").broken())
        .containsExactly("/revision revision-too-low");
  }

  @Test
  void shouldRefuseAnAmendmentWithoutReasonAndFindings() {
    assertThat(Request.with("\"revision\":2,\"status\":\"amended\"").broken())
        .containsExactly("/reason no-reason", "/findings no-findings");
  }
}
