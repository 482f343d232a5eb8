package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;

/**
 * Names the version of our style sheets and scripts by what is in them, so that a browser may keep
 * them and still never shows a new page in an old dress.
 */
@ApplicationScoped
class Assets {

  static final List<String> FILES =
      List.of(
          "assess-fields.css",
          "assess-form.js",
          "assess-keypad.js",
          "assess-preview.js",
          "assess-time.js",
          "assess.css",
          "assess.js",
          "base.css",
          "board.css",
          "charts.js",
          "clock.js",
          "device.js",
          "dress.js",
          "live.js",
          "mark.svg",
          "patient.css",
          "sign.css",
          "tokens.css",
          "unsent.js");

  private final String version = hash();

  String version() {
    return version;
  }

  private static String hash() {
    try {
      var digest = MessageDigest.getInstance("SHA-256");
      for (String file : FILES) {
        digest.update(content(file));
      }
      return HexFormat.of().formatHex(digest.digest(), 0, 4);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static byte[] content(String file) {
    String path = "/META-INF/resources/assets/" + file;
    try (var in = Objects.requireNonNull(Assets.class.getResourceAsStream(path), path)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
