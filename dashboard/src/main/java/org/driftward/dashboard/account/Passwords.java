package org.driftward.dashboard.account;

import io.quarkus.elytron.security.common.BcryptUtil;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Hashes and compares passwords with bcrypt. Every comparison costs the same, whether the account
 * exists or not. Slow on purpose: never call it on an event loop. Thread-safe.
 */
public final class Passwords {

  /** Bcrypt ignores what comes after; a longer password is refused rather than cut. */
  static final int MOST_BYTES = 72;

  private final int cost;
  private final String nobodysHash;

  /**
   * @param cost the work doubles with each step; 4 to 31
   */
  public Passwords(int cost) {
    this.cost = cost;
    this.nobodysHash = hash(UUID.randomUUID().toString());
  }

  /**
   * @return bcrypt hash in modular crypt format, with its salt and cost
   * @throws IllegalArgumentException if the password is empty or longer than 72 bytes in UTF-8
   */
  public String hash(String password) {
    int length = password.getBytes(StandardCharsets.UTF_8).length;
    if (length == 0 || length > MOST_BYTES) {
      throw new IllegalArgumentException(
          "a password has 1 to " + MOST_BYTES + " bytes, this one " + length);
    }
    return BcryptUtil.bcryptHash(password, cost);
  }

  /**
   * @param hash the account's, or null where there is no such account
   */
  public boolean match(String password, @Nullable String hash) {
    boolean matches = BcryptUtil.matches(password, hash == null ? nobodysHash : hash);
    boolean whole = password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
    return matches && whole && hash != null;
  }
}
