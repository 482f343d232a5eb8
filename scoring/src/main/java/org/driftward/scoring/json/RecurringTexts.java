package org.driftward.scoring.json;

import com.fasterxml.jackson.databind.annotation.JsonSerialize;

/** Which parts of a snapshot are written as {@link RecurringText}: annotations for its records. */
final class RecurringTexts {

  private RecurringTexts() {}

  /** Of a score. */
  interface OfScore {
    @JsonSerialize(using = RecurringText.class)
    String id();

    @JsonSerialize(using = RecurringText.class)
    String title();

    @JsonSerialize(using = RecurringText.class)
    String version();

    @JsonSerialize(using = RecurringText.class)
    String risk();

    @JsonSerialize(using = RecurringText.class)
    String riskIfWorst();
  }

  /** Of an input. */
  interface OfInput {
    @JsonSerialize(using = RecurringText.class)
    String code();

    @JsonSerialize(using = RecurringText.class)
    String unit();

    @JsonSerialize(using = RecurringText.class)
    String band();

    @JsonSerialize(using = RecurringText.class)
    String row();

    @JsonSerialize(using = RecurringText.class)
    String source();
  }

  /** Of a drift or a trend. */
  interface OfSeries {
    @JsonSerialize(using = RecurringText.class)
    String code();
  }
}
