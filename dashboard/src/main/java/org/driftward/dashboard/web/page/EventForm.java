package org.driftward.dashboard.web.page;

import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** What a person enters about something that happened to a patient. */
public class EventForm {

  @RestForm public @Nullable String kind;

  /** Time of day, or empty for now. */
  @RestForm public @Nullable String at;

  /** A tick. */
  @RestForm public @Nullable String notForResuscitation;

  /** A tick. */
  @RestForm public @Nullable String expected;

  @RestForm public @Nullable String note;

  @Nullable String words() {
    return FormField.words(note);
  }
}
