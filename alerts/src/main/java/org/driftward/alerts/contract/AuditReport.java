package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The measures of a stretch of time.
 *
 * @param policy version of the escalation policy whose times are meant by "within policy"
 */
public record AuditReport(
    AuditQuestion question, Instant madeAt, String policy, List<Measure> measures) {

  public AuditReport {
    measures = List.copyOf(measures);
  }

  /**
   * @param id {@code M1} to {@code M20} as in practice.md, or a lower-case word with hyphens
   * @param title as people call it
   * @param how what is counted over what, in words
   * @param source the published definition, or where there is none
   * @param figures empty where nothing can be said
   * @param lacking which data it would take, or null where all is there
   */
  public record Measure(
      String id,
      String title,
      String how,
      String source,
      List<Figure> figures,
      @Nullable String lacking) {
    public Measure {
      Objects.requireNonNull(id, "id");
      figures = List.copyOf(figures);
    }
  }

  /**
   * One number and what it rests on.
   *
   * @param unit for people, for example {@code %}, {@code min}, {@code per 100 bed-days}
   * @param value null where the denominator is nothing
   * @param numerator null for a median or a percentile
   * @param denominator how many, or how much, it is of
   * @param counted what is in the numerator, as {@code episode/…}, {@code encounter/…}, {@code
   *     encounter/…/event/…} or, of no single patient, {@code audit-event/…}
   * @param others what is in the denominator only
   * @param complete whether no trace was left off for length
   */
  public record Figure(
      String name,
      String unit,
      @Nullable Double value,
      @Nullable Double numerator,
      double denominator,
      List<String> counted,
      List<String> others,
      boolean complete) {
    public Figure {
      Objects.requireNonNull(name, "name");
      counted = List.copyOf(counted);
      others = List.copyOf(others);
    }
  }
}
