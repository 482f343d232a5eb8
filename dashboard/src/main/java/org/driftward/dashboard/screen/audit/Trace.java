package org.driftward.dashboard.screen.audit;

import org.driftward.alerts.contract.AuditReport.Figure;
import org.jspecify.annotations.Nullable;

/**
 * The way to what a number rests on; see {@link Figure}.
 *
 * @param kind what it leads to
 * @param encounter of the stay, or null where it is not named
 * @param id of the episode, the stay or the event
 */
public record Trace(Kind kind, @Nullable String encounter, String id) {

  /** What a figure may rest on. */
  public enum Kind {
    EPISODE,
    STAY,
    EVENT
  }

  private static final String EVENT = "/event/";

  static Trace of(String trace) {
    int slash = trace.indexOf('/');
    var rest = trace.substring(slash + 1);
    int event = rest.indexOf(EVENT);
    return switch (trace.substring(0, slash)) {
      case "episode" -> new Trace(Kind.EPISODE, null, rest);
      case "encounter" ->
          event < 0
              ? new Trace(Kind.STAY, rest, rest)
              : new Trace(
                  Kind.EVENT, rest.substring(0, event), rest.substring(event + EVENT.length()));
      default -> new Trace(Kind.EVENT, null, rest);
    };
  }

  /** Of the page about it, or null where there is none. */
  public @Nullable String path() {
    return switch (kind) {
      case EPISODE -> "/episodes/" + id;
      case STAY -> "/encounters/" + id;
      case EVENT -> encounter == null ? null : "/encounters/" + encounter + "/events#" + id;
    };
  }
}
