package org.driftward.dashboard.web.page;

import org.jspecify.annotations.Nullable;

/** What a person typed into one field of a form. */
final class FormField {

  private FormField() {}

  /** An empty field is one that was left out. */
  static @Nullable String words(@Nullable String field) {
    return field == null || field.isBlank() ? null : field.strip();
  }
}
