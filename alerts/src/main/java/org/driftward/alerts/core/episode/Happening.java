package org.driftward.alerts.core.episode;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Something that the journal must keep. */
public sealed interface Happening {

  /** Account of the service itself, where no person acts. */
  String SERVICE = "driftward";

  /** Account of the person who did it, or {@link #SERVICE}. */
  String by();

  /**
   * An episode changed.
   *
   * @param kind see {@code EpisodeChange}
   * @param episode as it is now
   */
  record EpisodeChanged(
      String kind, String by, @Nullable String note, @Nullable String reason, Episode episode)
      implements Happening {
    public EpisodeChanged {
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(by, "by");
      Objects.requireNonNull(episode, "episode");
    }
  }

  /** Altered limits kept a trigger quiet; told once for as long as it goes on. */
  record Suppressed(String encounter, String ward, Trigger trigger, long plan)
      implements Happening {
    @Override
    public String by() {
      return SERVICE;
    }
  }

  /** A care plan was signed. */
  record PlanSigned(CarePlan plan, String by) implements Happening {}

  /** A care plan came to its end; the standard settings are back. */
  record PlanEnded(CarePlan plan) implements Happening {
    @Override
    public String by() {
      return SERVICE;
    }
  }

  /**
   * Something that people recorded which is no change of an episode: a shift, a call, a hand-over.
   *
   * @param subject for example {@code shift/S-1}
   * @param body what {@code CanonicalJson} can write
   */
  record Recorded(String subject, String kind, String by, Map<String, Object> body)
      implements Happening {
    public Recorded {
      body = Collections.unmodifiableMap(new HashMap<>(body));
    }

    /** The subject, never the body. */
    @Override
    public String toString() {
      return "Recorded[" + kind + "]";
    }
  }
}
