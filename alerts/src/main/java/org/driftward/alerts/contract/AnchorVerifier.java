package org.driftward.alerts.contract;

import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.core.journal.Ed25519Verifier;

/** Says whether an anchor was signed by the key of which this is the public half. Thread-safe. */
@FunctionalInterface
public interface AnchorVerifier {

  /** False as well where there is no signature. */
  boolean holds(Anchor anchor);

  /**
   * @param pem the public half of a key (X.509), possibly behind the private one
   * @throws IllegalArgumentException if there is none; quotes nothing
   */
  static AnchorVerifier read(String pem) {
    return Ed25519Verifier.read(pem);
  }
}
