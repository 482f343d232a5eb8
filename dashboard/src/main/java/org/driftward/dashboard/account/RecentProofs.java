package org.driftward.dashboard.account;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Remembers for a short while that a password was right, so that a program which sends it with
 * every call does not pay for bcrypt every time. Keeps no password: only a keyed digest of account,
 * password and stored hash, under a key that lives as long as the process. A changed password is
 * another stored hash, so the old one is forgotten at once. Thread-safe.
 */
final class RecentProofs {

  /** Enough for every program of a hospital; beyond it everything is forgotten. */
  private static final int MOST = 10_000;

  private final Map<String, Instant> until = new ConcurrentHashMap<>();
  private final SecretKeySpec key;
  private final Duration remember;

  RecentProofs(Duration remember) {
    var random = new byte[32];
    new SecureRandom().nextBytes(random);
    this.key = new SecretKeySpec(random, "HmacSHA256");
    this.remember = remember;
  }

  boolean know(String account, String password, String hash, Instant now) {
    var proof = proof(account, password, hash);
    var end = until.get(proof);
    if (end == null) {
      return false;
    }
    if (now.isBefore(end)) {
      return true;
    }
    until.remove(proof, end);
    return false;
  }

  void remember(String account, String password, String hash, Instant now) {
    if (until.size() >= MOST) {
      until.clear();
    }
    until.put(proof(account, password, hash), now.plus(remember));
  }

  private String proof(String account, String password, String hash) {
    try {
      var mac = Mac.getInstance(key.getAlgorithm());
      mac.init(key);
      for (String part : new String[] {account, password, hash}) {
        var bytes = part.getBytes(StandardCharsets.UTF_8);
        mac.update((byte) (bytes.length >>> 8));
        mac.update((byte) bytes.length);
        mac.update(bytes);
      }
      return HexFormat.of().formatHex(mac.doFinal());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("HMAC-SHA256 is part of every Java platform", e);
    }
  }
}
