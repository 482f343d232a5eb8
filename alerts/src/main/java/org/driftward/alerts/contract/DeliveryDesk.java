package org.driftward.alerts.contract;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** Who has been told of an alarm, and by what. Thread-safe, blocking. */
public interface DeliveryDesk {

  /** Every delivery of one episode, the newest alarm first. */
  List<Delivery> of(String episode);

  /** The deliveries of the newest alarm of each episode; no entry where there are none. */
  Map<String, List<Delivery>> newest(Collection<String> episodes);

  /** The deliveries of the present alarm of one episode; empty where there are none. */
  default List<Delivery> present(String episode) {
    return newest(List.of(episode)).getOrDefault(episode, List.of());
  }

  /**
   * An alarm that a page with its sound on has to sound now.
   *
   * @param notice sequence of the journal entry
   */
  record Tone(String episode, long notice, Level level) {}

  /**
   * Open episodes of which the present rung asks for a tone.
   *
   * @param wards only these, or null for all
   */
  List<Tone> tones(@Nullable Set<String> wards);

  /**
   * A page has sounded the alarm. That a page sounded is all that can be known: not whether anybody
   * heard it. Kept once for each alarm and account.
   *
   * @return false if there is no such alarm on a ward of these
   */
  boolean sounded(long notice, Actor actor, @Nullable Set<String> wards);

  /** In words, each channel that the policy asks for and that is not configured; usually empty. */
  List<String> channelsOff();
}
