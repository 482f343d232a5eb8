package org.driftward.alerts.core.journal;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.security.PublicKey;
import java.util.Base64;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;

/** The public half of a key. */
public record Ed25519Verifier(PublicKey key) implements AnchorVerifier {

  public static Ed25519Verifier read(String pem) {
    return new Ed25519Verifier(Ed25519.publicKey(Pem.read(Pem.PUBLIC_KEY, pem)));
  }

  @Override
  public boolean holds(Anchor anchor) {
    var signature = anchor.signature();
    if (signature == null) {
      return false;
    }
    try {
      var signed = Base64.getDecoder().decode(signature);
      return Ed25519.holds(key, anchor.seal().getBytes(US_ASCII), signed);
    } catch (IllegalArgumentException e) {
      // Not even Base64.
      return false;
    }
  }
}
