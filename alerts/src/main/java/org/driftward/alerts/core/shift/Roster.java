package org.driftward.alerts.core.shift;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;

/**
 * Who is on duty, as far as it has been read: everybody on the wards in question, and every shift
 * that matters of the people in question. Somebody of whom no shift was ever kept is neither on nor
 * off duty, and nothing passes on from them.
 *
 * @param shifts running ones and, of the people in question, the last that ended
 */
public record Roster(List<Shift> shifts) {

  private static final Comparator<Shift> NEWEST_FIRST =
      Comparator.comparing(Shift::from).thenComparing(Shift::id).reversed();

  public Roster {
    shifts = shifts.stream().sorted(NEWEST_FIRST).toList();
  }

  public static Roster of(Collection<Shift> shifts) {
    return new Roster(List.copyOf(shifts));
  }

  /** Whether the person had a duty and has none now. */
  public boolean off(String account) {
    return last(account).isPresent() && running().noneMatch(s -> s.account().equals(account));
  }

  /** The newest shift of a person, running or not. */
  public Optional<Shift> last(String account) {
    return shifts.stream()
        .filter(shift -> shift.account().equals(account))
        .max(Comparator.comparing(Shift::running).thenComparing(NEWEST_FIRST.reversed()));
  }

  /** Whoever took over the last duty of {@code account}, and is there for the ward now. */
  public Optional<Shift> successor(String account, String ward) {
    var next = last(account).map(Shift::successor);
    return running()
        .filter(shift -> shift.on(ward) && next.filter(shift.id()::equals).isPresent())
        .findFirst();
  }

  /** Whoever else answers for the bed by being there: its nurse, or whoever is in charge. */
  public Optional<Shift> answering(String account, String ward, @Nullable String bed) {
    return Stream.of(Audience.BEDSIDE_NURSE, Audience.CHARGE_NURSE)
        .flatMap(audience -> of(audience, ward, bed))
        .filter(shift -> !shift.account().equals(account))
        .findFirst();
  }

  /** Whether anybody keeps shifts of this very ward: then whoever is to answer there has one. */
  public boolean kept(String ward) {
    return running().anyMatch(shift -> shift.ward().equals(ward));
  }

  /** Whether the person is on duty for the ward now. */
  public boolean on(String account, String ward) {
    return running().anyMatch(shift -> shift.account().equals(account) && shift.on(ward));
  }

  /** Newest first. */
  public Stream<Shift> of(Audience audience, String ward, @Nullable String bed) {
    return running()
        .filter(shift -> shift.on(ward) && shift.duty() == duty(audience))
        .filter(shift -> audience != Audience.BEDSIDE_NURSE || coversBed(shift, bed));
  }

  private Stream<Shift> running() {
    return shifts.stream().filter(Shift::running);
  }

  private static boolean coversBed(Shift shift, @Nullable String bed) {
    return bed != null && shift.beds().contains(bed);
  }

  private static Duty duty(Audience audience) {
    return switch (audience) {
      case BEDSIDE_NURSE -> Duty.BEDSIDE;
      case CHARGE_NURSE -> Duty.CHARGE;
      case RESPONSE_TEAM -> Duty.RESPONSE;
      case ON_CALL -> Duty.ON_CALL;
    };
  }
}
