package org.driftward.dashboard.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.Narrative.Heard;
import org.driftward.ingest.contract.Narrative.Question;
import org.driftward.ingest.contract.Narrative.Span;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** The answer of {@code POST /api/encounters/{id}/narrative}. What is absent is left out. */
record NarrativeJson(List<HeardJson> findings, List<QuestionJson> questions, List<Span> unread) {

  static NarrativeJson of(Narrative narrative) {
    return new NarrativeJson(
        narrative.findings().stream().map(HeardJson::of).toList(),
        narrative.questions().stream().map(QuestionJson::of).toList(),
        narrative.unread());
  }

  /** A finding, and where and how directly it was said. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record HeardJson(
      String code,
      @Nullable String site,
      @Nullable Side side,
      @Nullable BigDecimal value,
      @Nullable String unit,
      @Nullable Integer grade,
      @Nullable String coded,
      @Nullable String text,
      @Nullable Integer from,
      @Nullable Integer to,
      Narrative.@Nullable Certainty certainty) {

    static HeardJson of(Heard heard) {
      return of(heard.finding(), heard.span(), heard.certainty());
    }

    static HeardJson of(
        Finding finding, @Nullable Span span, Narrative.@Nullable Certainty certainty) {
      var key = finding.key();
      var value = finding.value();
      var quantity = value instanceof FindingValue.Quantity known ? known : null;
      return new HeardJson(
          key.code(),
          key.site(),
          key.side(),
          quantity == null ? null : quantity.value(),
          quantity == null ? null : quantity.unit(),
          value instanceof FindingValue.Grade known ? known.grade() : null,
          value instanceof FindingValue.Coded known ? known.code() : null,
          value instanceof FindingValue.Text known ? known.text() : null,
          span == null ? null : span.from(),
          span == null ? null : span.to(),
          certainty);
    }
  }

  /** Something that only the speaker can settle. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record QuestionJson(
      int from, int to, Narrative.Why why, @Nullable String code, List<HeardJson> offers) {

    static QuestionJson of(Question question) {
      return new QuestionJson(
          question.span().from(),
          question.span().to(),
          question.why(),
          question.code(),
          question.offers().stream().map(offer -> HeardJson.of(offer, null, null)).toList());
    }
  }
}
