package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.driftward.dashboard.core.PatientView;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.ScoredInput;
import org.jspecify.annotations.Nullable;

/**
 * What a person may set in a care plan, and what the one in force does to the alarms.
 *
 * @param signs whether the person may sign and end plans
 * @param inForce whether one is in force
 * @param ended that the last plan has ended, or empty
 * @param sideBySide each altered limit with the unaltered points of the newest value
 * @param rows the values whose limits may be altered
 * @param populations the groups that a score definition asks for
 * @param usual words for the patient's own usual consciousness, the first for alert
 */
public record PlanPanel(
    boolean signs,
    boolean inForce,
    String ended,
    List<String> sideBySide,
    List<Row> rows,
    int scale,
    String ceiling,
    List<Option> populations,
    List<Option> usual) {

  /** For so long a page says that a plan has ended. Engineering choice, no source. */
  private static final Duration SAID_FOR = Duration.ofDays(1);

  private static final String CONSCIOUSNESS = "consciousness";

  private static final List<String> CODES =
      List.of(
          "respiratory-rate",
          "oxygen-saturation",
          "systolic-pressure",
          "heart-rate",
          "temperature");

  /**
   * @param standard what the catalogue expects, in words
   * @param low altered now, or empty
   * @param high altered now, or empty
   */
  public record Row(
      String code, String name, String unit, String standard, String low, String high) {}

  /** One choice of a form. */
  public record Option(String word, String label, boolean chosen) {
    static Option of(String word, boolean chosen) {
      return new Option(word, word.replace('-', ' '), chosen);
    }
  }

  public static PlanPanel of(
      PatientView view, Findings findings, Populations known, Reader reader, ZoneId zone) {
    var standing = view.standing();
    var plan = view.carePlanInForce();
    return new PlanPanel(
        reader.decides(),
        plan != null,
        ended(view.carePlan(), view.asOf(), zone),
        plan == null
            ? List.of()
            : plan.limits().stream().map(limit -> side(limit, view, findings)).toList(),
        CODES.stream().map(code -> row(code, plan, findings)).toList(),
        standing.oxygenScale(),
        standing.ceiling() == null ? "" : standing.ceiling(),
        known.names().stream()
            .map(name -> Option.of(name, standing.populations().contains(name)))
            .toList(),
        findings.options(CONSCIOUSNESS).stream()
            .map(word -> Option.of(word, word.equals(standing.usualConsciousness())))
            .toList());
  }

  private static String ended(@Nullable CarePlan plan, Instant now, ZoneId zone) {
    return plan == null
            || !plan.holdsOnlyForAWhile()
            || now.isBefore(plan.until())
            || now.isAfter(plan.until().plus(SAID_FOR))
        ? ""
        : "The care plan ended at %s. The standard settings are back."
            .formatted(Wording.time(plan.until(), now, zone));
  }

  /** An altered limit never hides the unaltered score. */
  private static String side(Limit limit, PatientView view, Findings findings) {
    var name = findings.name(limit.code());
    var altered =
        "%s: altered limit %s in place of %s"
            .formatted(
                name,
                PlanNotes.range(limit.low(), limit.high(), findings.unit(limit.code())),
                PlanNotes.range(limit.oldLow(), limit.oldHigh(), findings.unit(limit.code())));
    var score = view.snapshot() == null ? null : view.snapshot().leading();
    return score == null
        ? altered + "."
        : score.inputs().stream()
            .filter(input -> input.code().equals(limit.code()))
            .findFirst()
            .map(input -> altered + "; " + raw(input, limit, score.title()))
            .orElse(altered + "; not measured.");
  }

  private static String raw(ScoredInput input, Limit limit, String score) {
    return "now %s, %s in the unaltered %s, %s the altered limit."
        .formatted(
            Wording.value(input.value(), input.unit()),
            Wording.count(input.points(), "point", "points"),
            score,
            within(limit, input.value().number()) ? "within" : "outside");
  }

  private static boolean within(Limit limit, @Nullable BigDecimal value) {
    return value != null
        && (limit.low() == null || limit.low().compareTo(value) <= 0)
        && (limit.high() == null || value.compareTo(limit.high()) <= 0);
  }

  private static Row row(String code, @Nullable CarePlan plan, Findings findings) {
    var limit = plan == null ? null : plan.limit(code);
    return new Row(
        code,
        findings.name(code),
        Wording.unit(findings.unit(code)),
        findings.expected(code),
        limit == null ? "" : plain(limit.low()),
        limit == null ? "" : plain(limit.high()));
  }

  private static String plain(@Nullable BigDecimal number) {
    return number == null ? "" : number.toPlainString();
  }
}
