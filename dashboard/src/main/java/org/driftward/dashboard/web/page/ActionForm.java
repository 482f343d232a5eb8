package org.driftward.dashboard.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** The fields of an action's form. What an action needs is judged where it is done. */
public class ActionForm {

  /** Version of the episode that the person was looking at. */
  @RestForm public @Nullable Long version;

  @RestForm public @Nullable String note;

  @RestForm public @Nullable String reason;

  /** Sign-in name of whoever takes over. */
  @RestForm public @Nullable String to;

  /** How long to hold, as an ISO 8601 duration. */
  @RestForm("for")
  public @Nullable String length;

  EpisodeDesk.Request request(String episode, Action action, Instant now) {
    return new EpisodeDesk.Request(
        episode,
        action,
        version,
        FormField.words(note),
        FormField.words(reason),
        FormField.words(to),
        until(now));
  }

  private @Nullable Instant until(Instant now) {
    if (length == null) {
      return null;
    }
    try {
      return now.plus(Duration.parse(length));
    } catch (DateTimeParseException e) {
      return null;
    }
  }
}
