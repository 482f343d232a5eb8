package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.dashboard.core.BedOrder;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.driftward.ingest.contract.AccountRole;
import org.jspecify.annotations.Nullable;

/**
 * Who is on duty on a ward, and what the person may change about it.
 *
 * @param gaps what nobody answers for, in words
 * @param beds of the ward's patients, each with whoever looks after it
 * @param setsOthers whether the person sets the duty of somebody else
 * @param own sign-in name, to fill in
 * @param outcome of what was just asked for, or null
 */
public record StaffScreen(
    String ward,
    List<Row> rows,
    List<String> gaps,
    List<Bed> beds,
    List<Choice> duties,
    boolean setsOthers,
    String own,
    @Nullable Outcome outcome) {

  /**
   * @param told how the person is told of alarms beyond the board, or empty
   * @param mine whether the person may end it
   * @param heldByReader whether it is the person's own
   */
  public record Row(
      String id,
      String duty,
      String name,
      String account,
      String beds,
      String told,
      String since,
      Countdown until,
      boolean mine,
      boolean heldByReader) {}

  public record Bed(String bed, String covered) {}

  public record Choice(String word, String words) {}

  public static StaffScreen of(
      Board board, List<Shift> running, Reader reader, ZoneId zone, @Nullable Outcome outcome) {
    var now = board.asOf();
    var covered = covered(running);
    boolean charge = reader.has(AccountRole.CHARGE) || reader.has(AccountRole.ADMIN);
    var beds =
        board.cards().stream()
            .map(Card::bed)
            .flatMap(Stream::ofNullable)
            .sorted(BedOrder.INSTANCE)
            .map(bed -> new Bed(bed, covered.getOrDefault(bed, "")))
            .toList();
    return new StaffScreen(
        board.ward(),
        running.stream().map(shift -> row(shift, reader, charge, now, zone)).toList(),
        gaps(running, beds),
        beds,
        choices(reader),
        charge,
        reader.account(),
        outcome);
  }

  private static Row row(Shift shift, Reader reader, boolean charge, Instant now, ZoneId zone) {
    boolean own = shift.account().equals(reader.account());
    return new Row(
        shift.id(),
        words(shift.duty()),
        shift.name(),
        shift.account(),
        String.join(", ", shift.bedsInOrder()),
        told(shift.contact()),
        Wording.time(shift.from(), now, zone),
        Countdown.due(shift.until(), "ends in", "should have ended"),
        own || charge,
        own);
  }

  private static String told(@Nullable Contact contact) {
    return contact == null
        ? ""
        : Stream.of(contact.mail(), contact.webhook(), contact.number())
            .filter(Objects::nonNull)
            .collect(Collectors.joining(" "));
  }

  private static Map<String, String> covered(List<Shift> running) {
    var covered = new HashMap<String, String>();
    for (var shift : running) {
      for (var bed : shift.beds()) {
        covered.merge(bed, shift.name(), (one, other) -> one + ", " + other);
      }
    }
    return covered;
  }

  private static List<String> gaps(List<Shift> running, List<Bed> beds) {
    var gaps = new ArrayList<String>();
    if (running.stream().noneMatch(shift -> shift.duty() == Duty.CHARGE)) {
      gaps.add("Nobody is in charge of this ward.");
    }
    var open = beds.stream().filter(bed -> bed.covered().isEmpty()).map(Bed::bed).toList();
    if (!open.isEmpty()) {
      gaps.add("Nobody looks after bed " + String.join(", ", open) + ".");
    }
    return gaps;
  }

  /** The likeliest first. */
  private static List<Choice> choices(Reader reader) {
    var likely = reader.has(AccountRole.CHARGE) ? Duty.CHARGE : Duty.BEDSIDE;
    return Stream.concat(Stream.of(likely), Stream.of(Duty.values()).filter(duty -> duty != likely))
        .map(duty -> new Choice(duty.word(), words(duty)))
        .toList();
  }

  static String words(Duty duty) {
    return switch (duty) {
      case BEDSIDE -> "At the bedside";
      case CHARGE -> "In charge";
      case RESPONSE -> "Response team";
      case ON_CALL -> "On call";
    };
  }
}
