package org.driftward.dashboard.core;

/** Keeps who looked at which patient. Thread-safe, blocking. */
public interface AccessBook {

  /**
   * Kept when it returns; a look that cannot be kept must not be answered.
   *
   * @param account who looked
   * @param ward where the patient was at that moment
   * @param what was shown: a stable lower-case word with hyphens, for example {@code history}
   */
  void looked(String account, String encounter, String ward, String what);
}
