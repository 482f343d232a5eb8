package org.driftward.deploy.whole;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Breaks a JSON text at one of its fields, strings or numbers, or at a byte. */
final class BrokenInput {

  private static final Pattern TOKEN =
      Pattern.compile("\"[^\"]*\"|-?[0-9]+(\\.[0-9]+)?(?=[,}\\]\\s])|[{}\\[\\]]");
  private static final String[] ODD = {
    "null",
    "\"\"",
    "\"\\u0000\"",
    "[]",
    "{}",
    "true",
    "-1",
    "1e400",
    "1e999999999",
    "\"\\ud800\"",
    "\"9999-12-31T23:59:59Z\"",
    "\"V-0\"",
    "",
    "}"
  };

  private BrokenInput() {}

  static byte[] of(String whole, long seed) {
    var random = new Random(seed);
    var tokens = TOKEN.matcher(whole).results().toList();
    var broken = new StringBuilder(whole);
    MatchResult token = tokens.get(random.nextInt(tokens.size()));
    broken.replace(token.start(), token.end(), ODD[random.nextInt(ODD.length)]);
    var bytes = broken.toString().getBytes(StandardCharsets.UTF_8);
    if (random.nextInt(5) == 0) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return bytes;
  }
}
