package org.driftward.dashboard.web.page;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.contract.PlanRequest.Standing;
import org.driftward.alerts.contract.PlanRequest.Temporary;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** The fields of the form that sets a care plan. */
public class PlanForm {

  /** Of one altered limit each, in the same order; a row without values is left out. */
  @RestForm("limit")
  public @Nullable List<String> codes;

  @RestForm("low")
  public @Nullable List<String> lows;

  @RestForm("high")
  public @Nullable List<String> highs;

  @RestForm public @Nullable String scale;
  @RestForm public @Nullable String interval;
  @RestForm public @Nullable String ceiling;

  /** How long escalation rests, as an ISO 8601 duration; empty for no hold. */
  @RestForm("hold")
  public @Nullable String holdLength;

  @RestForm public @Nullable String reason;
  @RestForm public @Nullable String approvedBy;
  @RestForm public @Nullable String approverRole;

  /** How long the plan runs, as an ISO 8601 duration. */
  @RestForm("for")
  public @Nullable String length;

  /** Each group that is ticked. */
  @RestForm public @Nullable List<String> population;

  @RestForm public @Nullable String usual;

  /** Ticked where the standing facts have been looked at and are signed again. */
  @RestForm public @Nullable String reviewed;

  /**
   * @param before the newest plan, whose settings that the form does not show go on, or null
   * @throws IllegalArgumentException in words
   */
  PlanRequest request(String encounter, @Nullable CarePlan before, Instant now) {
    var why = reason == null ? "" : reason.strip();
    var hold = duration("hold", holdLength);
    var runs = duration("for", length);
    return new PlanRequest(
        encounter,
        new Temporary(
            limits(),
            duration("interval", interval),
            hold == null ? null : new Hold(why, now.plus(hold)),
            before == null || !before.inForce(now) ? null : before.newBaseline()),
        new Standing(
            "2".equals(scale) ? 2 : 1,
            population == null ? List.of() : population.stream().filter(p -> !p.isBlank()).toList(),
            usual == null ? "" : usual,
            ceiling == null ? "" : ceiling,
            null,
            reviewed != null),
        why,
        now,
        runs == null ? null : now.plus(runs),
        FormField.words(approvedBy),
        FormField.words(approverRole));
  }

  private List<Limit> limits() {
    var limits = new ArrayList<Limit>();
    int rows = codes == null ? 0 : codes.size();
    for (int row = 0; row < rows; row++) {
      var low = number(lows, row);
      var high = number(highs, row);
      if (low != null || high != null) {
        limits.add(new Limit(List.copyOf(codes).get(row), low, high));
      }
    }
    return limits;
  }

  private static @Nullable BigDecimal number(@Nullable List<String> fields, int row) {
    if (fields == null || row >= fields.size() || fields.get(row).isBlank()) {
      return null;
    }
    try {
      return new BigDecimal(fields.get(row).strip().replace(',', '.'));
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("a limit is a number", e);
    }
  }

  private static @Nullable Duration duration(String field, @Nullable String text) {
    if (text == null || text.isBlank()) {
      return null;
    }
    try {
      return Duration.parse(text);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(field + " is a length of time", e);
    }
  }
}
