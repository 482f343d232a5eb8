package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.alerts.core.journal.Anchors;
import org.driftward.alerts.core.journal.Chain;
import org.driftward.alerts.core.journal.ChainCheck;
import org.driftward.alerts.core.journal.Line;
import org.jspecify.annotations.Nullable;

/**
 * The arithmetic of the journal, for anybody who holds entries: nothing here asks a database, so a
 * copy can be checked by itself, far from the house it came from.
 */
public interface JournalChain {

  /** In place of a hash before the first entry and before the first anchor. */
  String START = "0".repeat(64);

  /** Takes entries in the order in which they stand. Not thread-safe. */
  interface Check {

    /** Goes on after a fault, to tell an entry that is missing from one that was moved. */
    void take(Entry entry);

    /** What was found; the first fault counts. */
    Verdict finish();
  }

  /**
   * @param anchors kept elsewhere, oldest first; may be empty
   */
  static Check check(List<Anchor> anchors) {
    return new ChainCheck(anchors);
  }

  /**
   * As {@link #check(List)}; the anchors must be signed as well. A signed anchor vouches for those
   * before it, which its seal covers.
   */
  static Check check(List<Anchor> anchors, AnchorVerifier verifier) {
    return new ChainCheck(anchors, verifier);
  }

  /**
   * The next entry of a chain.
   *
   * @param sequence of the last entry; 0 before the first
   * @param head hash of the last entry
   * @param at kept to the millisecond
   */
  static Entry next(
      long sequence, String head, Instant at, String subject, String kind, String by, String body) {
    return new Chain(sequence, head).next(new Line(subject, kind, by, body), at);
  }

  /**
   * The next anchor of a file.
   *
   * @param before the last one in it, or null
   * @param last the journal's newest entry
   */
  static Anchor anchor(@Nullable Anchor before, Entry last, Instant now) {
    return Anchors.next(before, last, now);
  }
}
