package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/** Keeps who looked at which patient. Thread-safe, blocking. */
public interface AccessBook {

  /**
   * One look, or several of the same person at the same of the same patient within a quarter of an
   * hour.
   *
   * @param at of the first
   */
  record Look(
      long sequence, Instant at, String account, String encounter, String ward, String what) {}

  /**
   * What to read of the book.
   *
   * @param scope only looks at patients who were on these wards then
   * @param encounter or null for all
   * @param account or null for all
   * @param from inclusive
   * @param to exclusive
   * @param limit at most this many, the newest
   */
  record Question(
      WardScope scope,
      @Nullable String encounter,
      @Nullable String account,
      Instant from,
      Instant to,
      int limit) {}

  /**
   * Kept when it returns; a look that cannot be kept must not be answered.
   *
   * @param account who looked
   * @param ward where the patient was at that moment
   * @param what was shown: a stable lower-case word with hyphens, for example {@code history}
   */
  void looked(String account, String encounter, String ward, String what);

  /** Newest first. */
  List<Look> looks(Question question);

  /** Recomputes the chain of the looks, which is made as the journal's is. */
  Verdict check();
}
