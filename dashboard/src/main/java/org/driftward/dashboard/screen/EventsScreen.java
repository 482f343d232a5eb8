package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.ClinicalEvent.Kind;
import org.jspecify.annotations.Nullable;

/**
 * What happened to a patient during the stay and what the measures count.
 *
 * @param lines newest first
 * @param writes whether the person may record
 */
public record EventsScreen(
    Identity who,
    List<Line> lines,
    boolean writes,
    List<StaffScreen.Choice> kinds,
    @Nullable Outcome outcome) {

  /**
   * @param more circumstances and the note, in words, or empty
   * @param by who recorded it, and when if that was late
   */
  public record Line(String id, Instant at, String time, String what, String more, String by) {}

  public static EventsScreen of(
      Identity who,
      List<ClinicalEvent> events,
      Reader reader,
      Instant now,
      ZoneId zone,
      @Nullable Outcome outcome) {
    return new EventsScreen(
        who,
        events.stream()
            .sorted((one, other) -> other.at().compareTo(one.at()))
            .map(event -> line(event, now, zone))
            .toList(),
        reader.cares(),
        Arrays.stream(Kind.values())
            .map(kind -> new StaffScreen.Choice(kind.word(), words(kind)))
            .toList(),
        outcome);
  }

  private static Line line(ClinicalEvent event, Instant now, ZoneId zone) {
    return new Line(
        event.id(),
        event.at(),
        Wording.time(event.at(), now, zone),
        words(event.kind()),
        more(event),
        event.by() + late(event, now, zone));
  }

  private static String more(ClinicalEvent event) {
    var parts = new ArrayList<String>();
    if (event.notForResuscitation()) {
      parts.add("an order not to resuscitate was in force");
    }
    if (event.expected()) {
      parts.add(event.kind() == Kind.DEATH ? "expected" : "planned");
    }
    if (event.note() != null) {
      parts.add(event.note());
    }
    return String.join("; ", parts);
  }

  /** A late entry keeps both times. */
  private static String late(ClinicalEvent event, Instant now, ZoneId zone) {
    return event.enteredAt().minusSeconds(60).isAfter(event.at())
        ? ", entered " + Wording.time(event.enteredAt(), now, zone)
        : "";
  }

  public static String words(Kind kind) {
    return switch (kind) {
      case ARREST -> "Arrest";
      case INTENSIVE_CARE -> "Move to intensive care";
      case DEATH -> "Death";
      case INTERVENTION -> "Critical intervention";
    };
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "EventsScreen[" + who.encounter() + "]";
  }
}
