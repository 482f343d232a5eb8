package org.driftward.alerts.core.journal;

import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * Recomputes the chain, entry by entry in the order of the journal, and remembers the first fault.
 * Not thread-safe.
 */
public final class ChainCheck {

  private Chain chain = Chain.START;
  private long entries;
  private @Nullable String fault;
  private @Nullable Long faultAt;

  /**
   * @return whether the chain holds so far; after the first fault the rest tells nothing new
   */
  public boolean take(Entry entry) {
    if (fault != null) {
      return false;
    }
    entries++;
    long expected = chain.sequence() + 1;
    if (entry.sequence() > expected) {
      return found(expected, "entry " + expected + " is missing");
    }
    if (entry.sequence() < expected) {
      return found(entry.sequence(), "entry " + entry.sequence() + " stands there more than once");
    }
    boolean own = Chain.hashOf(entry).equals(entry.hash());
    boolean follows = entry.previous().equals(chain.hash());
    if (own && follows) {
      chain = chain.after(entry);
      return true;
    }
    return found(expected, "entry " + expected + " " + what(own, follows));
  }

  private static String what(boolean own, boolean follows) {
    if (own) {
      return "was inserted or moved here: it does not follow the one before";
    }
    return follows
        ? "was altered: its hash is not that of its content"
        : "was moved here or replaced: neither its hash nor its predecessor fits";
  }

  /**
   * @param head the end of the chain as it was written last
   */
  public Verdict finish(Chain head) {
    if (fault == null && head.sequence() > chain.sequence()) {
      found(chain.sequence() + 1, "entry " + (chain.sequence() + 1) + " is missing at the end");
    } else if (fault == null && head.sequence() < chain.sequence()) {
      found(head.sequence() + 1, "entry " + (head.sequence() + 1) + " was inserted at the end");
    } else if (fault == null && !head.hash().equals(chain.hash())) {
      found(chain.sequence(), "entry " + chain.sequence() + " is not the one written last");
    }
    return new Verdict(entries, fault, faultAt, chain.hash());
  }

  private boolean found(long at, String what) {
    fault = what;
    faultAt = at;
    return false;
  }
}
