package org.driftward.alerts.core.journal;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.security.PrivateKey;
import java.security.PublicKey;
import java.util.Base64;
import java.util.Objects;
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.Journal.Anchor;

/** Both halves of a key. Says nothing of the private one. */
public record Ed25519Signer(PrivateKey own, PublicKey shown) implements AnchorSigner {

  private static final byte[] SAMPLE = "both halves of one key".getBytes(US_ASCII);

  public Ed25519Signer {
    Objects.requireNonNull(own, "own");
    Objects.requireNonNull(shown, "shown");
    if (!Ed25519.holds(shown, SAMPLE, Ed25519.sign(own, SAMPLE))) {
      throw new IllegalArgumentException("the two halves are not one key's");
    }
  }

  public static String newKey() {
    var key = Ed25519.newKey();
    return Pem.write(Pem.PRIVATE_KEY, key.getPrivate().getEncoded())
        + Pem.write(Pem.PUBLIC_KEY, key.getPublic().getEncoded());
  }

  public static Ed25519Signer read(String pem) {
    return new Ed25519Signer(
        Ed25519.privateKey(Pem.read(Pem.PRIVATE_KEY, pem)),
        Ed25519.publicKey(Pem.read(Pem.PUBLIC_KEY, pem)));
  }

  @Override
  public Anchor sign(Anchor anchor) {
    var signature = Ed25519.sign(own, anchor.seal().getBytes(US_ASCII));
    return anchor.signed(Base64.getEncoder().encodeToString(signature));
  }

  @Override
  public String publicKey() {
    return Pem.write(Pem.PUBLIC_KEY, shown.getEncoded());
  }

  @Override
  public String toString() {
    return "Ed25519Signer";
  }
}
