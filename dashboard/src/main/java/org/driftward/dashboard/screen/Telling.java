package org.driftward.dashboard.screen;

import java.util.List;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.DeliveryDesk.Tone;

/**
 * What a page has to sound, and by what nobody is told although the policy says so.
 *
 * @param alarms that ask for a tone
 * @param off in words; usually empty
 */
public record Telling(List<Alarm> alarms, List<String> off) {

  /**
   * @param notice by which the page says that it has sounded it
   * @param level word of the priority
   */
  public record Alarm(long notice, String level) {}

  public Telling {
    alarms = List.copyOf(alarms);
    off = List.copyOf(off);
  }

  /** {@link DeliveryDesk#channelsOff()} and {@link DeliveryDesk#tones} for a page. */
  public static Telling of(List<Tone> tones, List<String> off) {
    return new Telling(
        tones.stream().map(tone -> new Alarm(tone.notice(), tone.level().word())).toList(), off);
  }
}
