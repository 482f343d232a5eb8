package org.driftward.alerts.core.journal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.alerts.contract.JournalChain.Check;
import org.jspecify.annotations.Nullable;

/**
 * Recomputes the chain, entry by entry in the order of the journal, and remembers the first fault.
 * Not thread-safe.
 */
public final class ChainCheck implements Check {

  private final Map<Long, Anchor> anchors = new HashMap<>();
  private final long anchoredUntil;
  private Chain chain = Chain.START;
  private long entries;
  private long anchorsMet;
  private @Nullable String fault;
  private @Nullable Long faultAt;
  private @Nullable Long missing;

  public ChainCheck() {
    this(List.of());
  }

  /**
   * @param kept anchors, oldest first
   */
  public ChainCheck(List<Anchor> kept) {
    kept.forEach(anchor -> anchors.put(anchor.sequence(), anchor));
    this.anchoredUntil = kept.stream().mapToLong(Anchor::sequence).max().orElse(0);
    Anchors.fault(kept).ifPresent(words -> fault = words);
  }

  /**
   * @param kept anchors, oldest first
   * @param verifier of their signatures
   */
  public ChainCheck(List<Anchor> kept, AnchorVerifier verifier) {
    this(kept);
    if (fault == null) {
      Anchors.unsigned(kept, verifier).ifPresent(words -> fault = words);
    }
  }

  @Override
  public void take(Entry entry) {
    entries++;
    if (fault == null) {
      check(entry);
    } else if (missing != null && entry.sequence() == missing) {
      fault = "entry " + missing + " was moved: it stands further down";
      missing = null;
    }
  }

  private void check(Entry entry) {
    long expected = chain.sequence() + 1;
    if (entry.sequence() > expected) {
      missing = expected;
      found(expected, "entry " + expected + " is missing");
      return;
    }
    if (entry.sequence() < expected) {
      found(entry.sequence(), "entry " + entry.sequence() + " stands there more than once");
      return;
    }
    boolean own = Chain.hashOf(entry).equals(entry.hash());
    boolean follows = entry.previous().equals(chain.hash());
    if (own && follows) {
      meet(entry);
      chain = chain.after(entry);
    } else {
      found(expected, "entry " + expected + " " + what(own, follows));
    }
  }

  private static String what(boolean own, boolean follows) {
    if (own) {
      return "was inserted or moved here: it does not follow the one before";
    }
    return follows
        ? "was altered: its hash is not that of its content"
        : "was moved here or replaced: neither its hash nor its predecessor fits";
  }

  /** A chain that holds in itself may still be another one than before. */
  private void meet(Entry entry) {
    @Nullable Anchor anchor = anchors.get(entry.sequence());
    if (anchor == null) {
      return;
    }
    if (anchor.head().equals(entry.hash())) {
      anchorsMet = entry.sequence();
    } else {
      found(
          anchorsMet + 1,
          "the chain was written anew: an entry from %d to %d is not the one anchored at %s"
              .formatted(anchorsMet + 1, entry.sequence(), anchor.at()));
    }
  }

  @Override
  public Verdict finish() {
    if (fault == null && anchoredUntil > chain.sequence()) {
      long next = chain.sequence() + 1;
      found(next, "entry " + next + " is missing at the end: an anchor knows it");
    }
    return new Verdict(entries, fault, faultAt, chain.hash());
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
    return finish();
  }

  private void found(long at, String what) {
    fault = what;
    faultAt = at;
  }
}
