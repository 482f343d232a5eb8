package org.driftward.dashboard.web.page;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The name of the file of a ward's copy. An ordinary ward's name serves as it is; of any other,
 * what is harmless is kept for people to know it by, and a hash tells it from all others.
 */
final class CopyName {

  private static final int LONGEST = 40;
  private static final int HASH_DIGITS = 16;

  private CopyName() {}

  static String of(String ward) {
    var plain = ward.replaceAll("[^A-Za-z0-9-]", "_");
    if (plain.equals(ward) && !plain.isEmpty() && plain.length() <= LONGEST) {
      return plain + ".html";
    }
    var beginning = plain.substring(0, Math.min(plain.length(), LONGEST));
    return beginning + "_" + hash(ward).substring(0, HASH_DIGITS) + ".html";
  }

  private static String hash(String text) {
    try {
      var digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("SHA-256 is part of every Java platform", e);
    }
  }
}
