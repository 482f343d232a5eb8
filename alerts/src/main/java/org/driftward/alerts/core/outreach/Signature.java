package org.driftward.alerts.core.outreach;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Signs what leaves the house: HMAC (RFC 2104) with SHA-256 over the time, a full stop and the
 * body, so that neither can be altered nor an old call be sent again as a new one.
 */
public final class Signature {

  private static final String ALGORITHM = "HmacSHA256";

  private Signature() {}

  /**
   * @param timestamp seconds since 1970
   * @return hexadecimal, lower case
   */
  public static String of(String secret, long timestamp, String body) {
    return hmac(secret.getBytes(StandardCharsets.UTF_8), timestamp + "." + body);
  }

  static String hmac(byte[] secret, String text) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(secret, ALGORITHM));
      return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java platform has " + ALGORITHM, e);
    }
  }
}
