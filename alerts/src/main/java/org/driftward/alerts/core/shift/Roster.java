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

  /** Whoever answers now for what {@code account} left behind in this bed. */
  public Optional<Shift> heir(String account, String ward, @Nullable String bed) {
    return successor(account)
        .or(() -> of(Audience.BEDSIDE_NURSE, ward, bed).findFirst())
        .or(() -> of(Audience.CHARGE_NURSE, ward, bed).findFirst());
  }

  /** Newest first. */
  public Stream<Shift> of(Audience audience, String ward, @Nullable String bed) {
    return running()
        .filter(shift -> shift.on(ward) && shift.duty() == duty(audience))
        .filter(shift -> audience != Audience.BEDSIDE_NURSE || coversBed(shift, bed));
  }

  private Optional<Shift> successor(String account) {
    var next = last(account).map(Shift::successor);
    return running().filter(shift -> next.filter(shift.id()::equals).isPresent()).findFirst();
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
