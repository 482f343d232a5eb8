package org.driftward.dashboard.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Ending;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.driftward.alerts.contract.CallDesk.Entry;
import org.driftward.dashboard.screen.TimeOfDay;
import org.driftward.ingest.contract.Word;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** The fields of the forms on a call's page; which one was sent, the filled field says. */
public class CallForm {

  @RestForm public @Nullable String step;
  @RestForm public @Nullable String caller;
  @RestForm public @Nullable String callerName;
  @RestForm public @Nullable String present;
  @RestForm public @Nullable String treatment;
  @RestForm public @Nullable String to;
  @RestForm public @Nullable String disposition;
  @RestForm public @Nullable String plan;
  @RestForm public @Nullable String recipient;
  @RestForm public @Nullable String note;

  /** Time of day, or empty for now. */
  @RestForm public @Nullable String at;

  /** Time of day of the next set. */
  @RestForm public @Nullable String nextSet;

  /**
   * @throws IllegalArgumentException if no form was filled
   * @throws java.time.DateTimeException if a time is none
   */
  Entry entry(Instant now, ZoneId zone) {
    var when = TimeOfDay.past(at, now, zone);
    if (FormField.words(step) != null) {
      return new Entry.Reached(Word.parse(Step.class, String.valueOf(step)), when);
    }
    if (FormField.words(caller) != null) {
      var role = Word.parse(CallerRole.class, String.valueOf(caller));
      return new Entry.CalledBy(new Caller(role, FormField.words(callerName)));
    }
    if (FormField.words(treatment) != null) {
      return new Entry.Treated(
          Word.parse(TreatmentKind.class, String.valueOf(treatment)), FormField.words(note), when);
    }
    if (FormField.words(present) != null) {
      return new Entry.Present(roles(String.valueOf(present)));
    }
    if (FormField.words(to) != null) {
      return new Entry.HandedOver(String.valueOf(to).strip(), null, note == null ? "" : note);
    }
    var where = Word.parse(Disposition.class, String.valueOf(disposition));
    var ending =
        new Ending(
            where,
            FormField.words(plan),
            FormField.words(recipient),
            TimeOfDay.next(nextSet, now, zone));
    return new Entry.Finished(ending, when);
  }

  private static Set<String> roles(String list) {
    return Stream.of(list.split("[,;\n]"))
        .map(String::strip)
        .filter(role -> !role.isEmpty())
        .collect(Collectors.toSet());
  }
}
