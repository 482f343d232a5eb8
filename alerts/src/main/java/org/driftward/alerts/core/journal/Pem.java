package org.driftward.alerts.core.journal;

import java.util.Base64;
import java.util.regex.Pattern;

/** Keys as text: RFC 7468. */
final class Pem {

  static final String PRIVATE_KEY = "PRIVATE KEY";
  static final String PUBLIC_KEY = "PUBLIC KEY";

  private static final int LINE = 64;

  private Pem() {}

  static String write(String label, byte[] der) {
    var lines = Base64.getMimeEncoder(LINE, new byte[] {'\n'}).encodeToString(der);
    return "-----BEGIN %s-----\n%s\n-----END %s-----\n".formatted(label, lines, label);
  }

  /**
   * @throws IllegalArgumentException if there is no such block, quoting nothing of the text
   */
  static byte[] read(String label, String text) {
    var block =
        Pattern.compile("-----BEGIN %s-----([^-]*)-----END %s-----".formatted(label, label))
            .matcher(text);
    if (!block.find()) {
      throw new IllegalArgumentException("no block \"" + label + "\"");
    }
    return Base64.getMimeDecoder().decode(block.group(1));
  }
}
