package org.driftward.scoring.stream;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.apache.kafka.common.KafkaException;
import org.driftward.scoring.core.timeline.Editions.UnknownEditionException;
import org.driftward.scoring.core.timeline.Outcome;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.stream.state.Histories;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Goes once through the encounters of a task, a few at a time, whenever an edition has been
 * adopted: those that nothing arrives for must be judged by it, too. One for each task, used by its
 * thread alone; where it stands is forgotten with the task, and going again does no harm.
 */
final class Walk {

  static final Duration PAUSE = Duration.ofMillis(200);

  private static final Logger LOG = Logger.getLogger(Walk.class);
  private static final int AT_ONCE = 50;

  private final Histories histories;
  private final Supplier<Timeline> timeline;
  private List<String> walked = List.of();
  private @Nullable String at;

  Walk(Histories histories, Supplier<Timeline> timeline) {
    this.histories = histories;
    this.timeline = timeline;
  }

  /** Lets the next few encounters catch up; gives what there is to send. */
  List<Outcome> some() {
    var editions = timeline.get().editions().versions();
    if (editions.equals(walked)) {
      return List.of();
    }
    var outcomes = new ArrayList<Outcome>();
    for (int i = 0; i < AT_ONCE; i++) {
      at = histories.encounterAfter(at);
      if (at == null) {
        walked = editions;
        break;
      }
      try {
        outcomes.add(histories.catchUp(at));
      } catch (KafkaException | UnknownEditionException e) {
        throw e;
      } catch (RuntimeException e) {
        // Its next record will fail the same way, and be set aside with the reason.
        LOG.errorf("An encounter cannot be judged again: failure=%s", e.getClass().getSimpleName());
      }
    }
    return outcomes;
  }
}
