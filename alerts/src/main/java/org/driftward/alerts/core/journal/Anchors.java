package org.driftward.alerts.core.journal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.jspecify.annotations.Nullable;

/**
 * Anchors: what the end of the journal was at a time. Whoever can write the database can make a new
 * chain that holds in itself, but not one that meets the anchors.
 */
public final class Anchors {

  private Anchors() {}

  public static Anchor next(@Nullable Anchor before, Entry last, Instant now) {
    var previous = before == null ? Chain.START.hash() : before.seal();
    var at = now.truncatedTo(ChronoUnit.MILLIS);
    var seal = seal(last.sequence(), last.hash(), at, previous);
    return new Anchor(last.sequence(), last.hash(), at, previous, seal, null);
  }

  /** The first anchor that does not follow the one before, in words. */
  static Optional<String> fault(List<Anchor> anchors) {
    var previous = Chain.START.hash();
    long sequence = 0;
    for (int i = 0; i < anchors.size(); i++) {
      var anchor = anchors.get(i);
      var seal = seal(anchor.sequence(), anchor.head(), anchor.at(), anchor.previous());
      if (!seal.equals(anchor.seal())) {
        return Optional.of("anchor " + (i + 1) + " was altered: its seal is not its content's");
      }
      if (!anchor.previous().equals(previous) || anchor.sequence() < sequence) {
        return Optional.of("anchor " + (i + 1) + " does not follow the one before");
      }
      previous = anchor.seal();
      sequence = anchor.sequence();
    }
    return Optional.empty();
  }

  /**
   * The first anchor for which no signature vouches, in words. A seal covers everything before it,
   * so anchors older than the key are vouched for by the first that is signed.
   */
  static Optional<String> unsigned(List<Anchor> anchors, AnchorVerifier verifier) {
    boolean signed = false;
    for (int i = 0; i < anchors.size(); i++) {
      boolean bare = anchors.get(i).signature() == null;
      if (bare && signed) {
        return Optional.of("anchor " + (i + 1) + " is not signed, although one before it is");
      }
      if (!bare && !verifier.holds(anchors.get(i))) {
        return Optional.of("anchor " + (i + 1) + " was not signed by this key");
      }
      signed = !bare;
    }
    return signed ? Optional.empty() : Optional.of("no anchor is signed");
  }

  private static String seal(long sequence, String head, Instant at, String previous) {
    return Chain.sha256(
        CanonicalJson.write(
            Map.of("at", at, "head", head, "previous", previous, "sequence", sequence)));
  }
}
