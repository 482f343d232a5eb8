package org.driftward.alerts.core.journal;

import java.security.GeneralSecurityException;
import java.security.InvalidKeyException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.SignatureException;
import java.security.spec.InvalidKeySpecException;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;

/** Signatures of RFC 8032 by the platform's own means, which every JDK from 15 on has. */
final class Ed25519 {

  private static final String ALGORITHM = "Ed25519";

  private Ed25519() {}

  static KeyPair newKey() {
    try {
      return KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
    } catch (GeneralSecurityException e) {
      throw missing(e);
    }
  }

  /**
   * @throws IllegalArgumentException if it is none
   */
  static PrivateKey privateKey(byte[] pkcs8) {
    try {
      return KeyFactory.getInstance(ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(pkcs8));
    } catch (InvalidKeySpecException e) {
      throw new IllegalArgumentException("no private key of " + ALGORITHM, e);
    } catch (GeneralSecurityException e) {
      throw missing(e);
    }
  }

  /**
   * @throws IllegalArgumentException if it is none
   */
  static PublicKey publicKey(byte[] x509) {
    try {
      return KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(x509));
    } catch (InvalidKeySpecException e) {
      throw new IllegalArgumentException("no public key of " + ALGORITHM, e);
    } catch (GeneralSecurityException e) {
      throw missing(e);
    }
  }

  static byte[] sign(PrivateKey key, byte[] message) {
    try {
      var signature = Signature.getInstance(ALGORITHM);
      signature.initSign(key);
      signature.update(message);
      return signature.sign();
    } catch (GeneralSecurityException e) {
      throw missing(e);
    }
  }

  static boolean holds(PublicKey key, byte[] message, byte[] signed) {
    try {
      var signature = Signature.getInstance(ALGORITHM);
      signature.initVerify(key);
      signature.update(message);
      return signature.verify(signed);
    } catch (SignatureException | InvalidKeyException e) {
      // Not even of the form of a signature, or no point of the curve.
      return false;
    } catch (GeneralSecurityException e) {
      throw missing(e);
    }
  }

  private static IllegalStateException missing(GeneralSecurityException e) {
    return new IllegalStateException("this Java platform has no " + ALGORITHM, e);
  }
}
