package org.driftward.ingest.web;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A failure as it may be logged: types and places, no messages, because a message may quote what
 * somebody sent about a patient.
 */
final class Redacted extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private Redacted(Throwable failure, @Nullable Throwable cause) {
    super(failure.getClass().getName(), cause, false, true);
    setStackTrace(failure.getStackTrace());
  }

  static Redacted of(Throwable failure) {
    return of(failure, Collections.newSetFromMap(new IdentityHashMap<>()));
  }

  private static Redacted of(Throwable failure, Set<Throwable> seen) {
    seen.add(failure);
    var cause = failure.getCause();
    return new Redacted(failure, cause == null || seen.contains(cause) ? null : of(cause, seen));
  }
}
