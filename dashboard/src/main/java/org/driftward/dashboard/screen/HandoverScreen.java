package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.alerts.contract.Shift;
import org.jspecify.annotations.Nullable;

/**
 * The text with which a patient is handed over, to be finished by a person.
 *
 * @param parts in the order of ISBAR
 * @param people on duty, to choose from
 * @param earlier newest first
 */
public record HandoverScreen(
    Identity who,
    List<Part> parts,
    String receiver,
    String account,
    List<Person> people,
    List<Earlier> earlier,
    @Nullable Outcome outcome) {

  /**
   * @param field name in the form
   * @param hint where the words come from
   */
  public record Part(String field, String title, String hint, String text, int rows) {}

  public record Person(String account, String words) {}

  public record Earlier(String head, List<Part> parts, String readBack) {}

  public static HandoverScreen of(
      Identity who,
      HandoverText text,
      String receiver,
      String account,
      List<Shift> onDuty,
      List<Handover> earlier,
      Instant now,
      ZoneId zone,
      @Nullable Outcome outcome) {
    return new HandoverScreen(
        who,
        parts(text),
        receiver,
        account,
        onDuty.stream()
            .map(
                shift ->
                    new Person(
                        shift.account(), shift.name() + ", " + StaffScreen.words(shift.duty())))
            .toList(),
        earlier.stream().map(one -> earlier(one, now, zone)).toList(),
        outcome);
  }

  private static Earlier earlier(Handover one, Instant now, ZoneId zone) {
    return new Earlier(
        "%s, %s to %s"
            .formatted(
                Wording.time(one.at(), now, zone),
                Objects.requireNonNullElse(one.giverName(), one.giver()),
                one.receiver()),
        parts(one.text()),
        one.readBack() ? "Read back and confirmed." : "Not read back.");
  }

  private static List<Part> parts(HandoverText text) {
    return List.of(
        part("identify", "Identify", "from the record", text.identify()),
        part("situation", "Situation", "from the record", text.situation()),
        part("background", "Background", "from the record", text.background()),
        part(
            "assessment", "Assessment", "yours: what do you think is going on?", text.assessment()),
        part(
            "recommendation",
            "Recommendation",
            "drafted from policy: change it or confirm it below",
            text.recommendation()));
  }

  private static Part part(String field, String title, String hint, String text) {
    long lines = text.lines().mapToLong(line -> 1 + line.length() / 110).sum();
    return new Part(field, title, hint, text, (int) Math.max(3, lines));
  }

  @Override
  public String toString() {
    return "HandoverScreen[" + who.encounter() + "]";
  }
}
