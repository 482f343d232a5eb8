package org.driftward.alerts.contract;

import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.core.journal.Ed25519Signer;

/**
 * Signs anchors, so that whoever can write the database and the file of the anchors, but has not
 * the key, can forge neither. Ed25519 (RFC 8032) over the text of the seal. Thread-safe.
 */
public interface AnchorSigner {

  /** The anchor with its signature. */
  Anchor sign(Anchor anchor);

  /** What checks the signatures, as PEM (RFC 7468). To be kept and shown wherever it is needed. */
  String publicKey();

  /** A new key as PEM: the private half (PKCS #8), then the public half (X.509). */
  static String newKey() {
    return Ed25519Signer.newKey();
  }

  /**
   * @param pem both halves, as {@link #newKey()} makes them
   * @throws IllegalArgumentException if a half is missing, or they are not one key's; quotes
   *     nothing
   */
  static AnchorSigner read(String pem) {
    return Ed25519Signer.read(pem);
  }
}
