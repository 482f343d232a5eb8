package org.driftward.dashboard.screen;

import java.util.List;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.DeliveryDesk.Tone;

/**
 * What a page has to sound, why its quiet must not be trusted, and by what nobody is told although
 * the policy says so.
 *
 * @param alarms that ask for a tone
 * @param warnings the most dangerous first; usually none
 * @param off in words; usually empty
 */
public record Telling(List<Alarm> alarms, List<Warning> warnings, List<String> off) {

  /**
   * @param notice by which the page says that it has sounded it
   * @param level word of the priority
   */
  public record Alarm(long notice, String level) {}

  public Telling {
    alarms = List.copyOf(alarms);
    warnings = List.copyOf(warnings);
    off = List.copyOf(off);
  }

  /**
   * @param tones of the page's wards, see {@link DeliveryDesk#tones}
   */
  public static Telling of(List<Tone> tones, List<Warning> warnings, List<String> off) {
    return new Telling(
        tones.stream().map(tone -> new Alarm(tone.notice(), tone.level().word())).toList(),
        warnings,
        off);
  }
}
