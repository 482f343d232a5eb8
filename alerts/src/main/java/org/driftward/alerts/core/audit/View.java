package org.driftward.alerts.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.jspecify.annotations.Nullable;

/** The evidence, sorted for the measures, and what of it a question is about. */
final class View {

  /** How far back from an event its signs are looked for. Trinkle and Flabouris; Subbe 2019. */
  static final Duration BEFORE = Duration.ofHours(24);

  private static final NavigableMap<Instant, ObservedSet> NO_SETS = Collections.emptyNavigableMap();

  private final Evidence evidence;
  private final Window window;
  private final EscalationPolicy policy;
  private final List<Alarm> everyAlarm;
  private final Map<String, NavigableMap<Instant, ObservedSet>> sets = new HashMap<>();
  private final Map<String, List<Stay>> stays = new HashMap<>();

  View(Evidence evidence, AuditQuestion question, ZoneId zone, EscalationPolicy policy) {
    this.evidence = evidence;
    this.window = new Window(question, zone);
    this.policy = policy;
    this.everyAlarm = AlarmList.of(evidence.changes());
    for (var set : evidence.sets()) {
      sets.computeIfAbsent(set.encounter(), e -> new TreeMap<>()).put(set.at(), set);
    }
    for (var stay : evidence.stays()) {
      stays.computeIfAbsent(stay.encounter(), e -> new ArrayList<>()).add(stay);
    }
  }

  Evidence evidence() {
    return evidence;
  }

  Window window() {
    return window;
  }

  EscalationPolicy policy() {
    return policy;
  }

  double bedDays() {
    return window.bedDays(evidence.stays(), evidence.until());
  }

  /** The alarms that are asked about. */
  List<Alarm> alarms() {
    return everyAlarm.stream()
        .filter(alarm -> window.holds(alarm.at(), alarm.ward()))
        .filter(alarm -> window.holdsScore(scoreAt(alarm.encounter(), alarm.at())))
        .toList();
  }

  /** Also those of the day before. */
  List<Alarm> everyAlarm() {
    return everyAlarm;
  }

  List<Call> calls() {
    return evidence.calls().stream()
        .filter(call -> window.holds(call.at(), call.ward()))
        .filter(call -> window.holdsScore(scoreAt(call.encounter(), call.at())))
        .toList();
  }

  /** The sets that are asked about. */
  List<ObservedSet> sets() {
    return evidence.sets().stream()
        .filter(set -> wardAt(set.encounter(), set.at()).filter(window::sees).isPresent())
        .filter(set -> window.holds(set.at()))
        .filter(set -> window.holdsScore(set.low()))
        .toList();
  }

  /** Every set of a patient, by time. */
  NavigableMap<Instant, ObservedSet> setsOf(String encounter) {
    return sets.getOrDefault(encounter, NO_SETS);
  }

  /** Score of the newest set at a moment; null where there was none. */
  @Nullable BigDecimal scoreAt(String encounter, Instant at) {
    var newest = setsOf(encounter).floorEntry(at);
    return newest == null ? null : newest.getValue().low();
  }

  Optional<String> wardAt(String encounter, Instant at) {
    return stays.getOrDefault(encounter, List.of()).stream()
        .filter(stay -> !stay.from().isAfter(at))
        .filter(stay -> stay.until() == null || at.isBefore(stay.until()))
        .map(Stay::ward)
        .reduce((first, last) -> last);
  }

  /** When the patient left the house, or null. */
  @Nullable Instant leftAt(String encounter) {
    return stays.getOrDefault(encounter, List.of()).stream()
        .filter(Stay::separation)
        .map(Stay::until)
        .findFirst()
        .orElse(null);
  }

  List<AuditEvent> events(AuditEvent.Kind kind) {
    return evidence.events().stream()
        .filter(event -> event.kind() == kind)
        .filter(event -> window.holds(event.at(), event.ward()))
        .toList();
  }

  List<Stay> admissions() {
    return evidence.stays().stream()
        .filter(Stay::admission)
        .filter(stay -> window.holds(stay.from(), stay.ward()))
        .toList();
  }

  List<Stay> separations() {
    return evidence.stays().stream()
        .filter(Stay::separation)
        .filter(stay -> stay.until() != null && window.holds(stay.until(), stay.ward()))
        .toList();
  }

  static String trace(AuditEvent event) {
    return event.encounter() == null
        ? "audit-event/" + event.id()
        : "encounter/" + event.encounter() + "/event/" + event.id();
  }

  static String trace(Stay stay) {
    return "encounter/" + stay.encounter();
  }

  static String trace(ObservedSet set) {
    return "encounter/" + set.encounter();
  }
}
