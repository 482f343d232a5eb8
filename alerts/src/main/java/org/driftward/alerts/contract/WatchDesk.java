package org.driftward.alerts.contract;

import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether alarms are raised and sent at all, as the processes that do so say themselves. A ward
 * must not look quiet only because nobody watches it any more. Thread-safe, blocking.
 */
public interface WatchDesk {

  /** A process that has said nothing for so long counts as gone. */
  Duration GONE = Duration.ofSeconds(30);

  /**
   * @param heard whether any process that raises and sends alarms has been heard of within {@link
   *     #GONE}
   * @param silence since the last one was heard of; null where none is remembered
   * @param failing names of the parts that fail in every process heard of, sorted: where one
   *     process still does the work, it is done
   * @param off in words, each channel that the policy asks for and that one of the processes heard
   *     of is not configured for, sorted
   */
  record Watch(boolean heard, @Nullable Duration silence, List<String> failing, List<String> off) {
    public Watch {
      failing = List.copyOf(failing);
      off = List.copyOf(off);
    }
  }

  Watch now();
}
