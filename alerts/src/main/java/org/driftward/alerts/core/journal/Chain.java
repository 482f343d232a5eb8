package org.driftward.alerts.core.journal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.Map;
import org.driftward.alerts.contract.Journal.Entry;

/**
 * The end of the journal, to which the next entry is chained.
 *
 * @param sequence of the last entry; 0 before the first
 * @param hash of the last entry
 */
public record Chain(long sequence, String hash) {

  /** Before the first entry. */
  public static final Chain START = new Chain(0, "0".repeat(64));

  /** The next entry; its time is kept to the millisecond, which every database can hold. */
  public Entry next(Line line, Instant now) {
    var at = now.truncatedTo(ChronoUnit.MILLIS);
    var unsealed =
        new Entry(sequence + 1, at, line.subject(), line.kind(), line.by(), line.body(), hash, "");
    return seal(unsealed);
  }

  public Chain after(Entry entry) {
    return new Chain(entry.sequence(), entry.hash());
  }

  /** The entry with the hash that it ought to have. */
  static Entry seal(Entry entry) {
    return new Entry(
        entry.sequence(),
        entry.at(),
        entry.subject(),
        entry.kind(),
        entry.by(),
        entry.body(),
        entry.previous(),
        hashOf(entry));
  }

  /**
   * SHA-256, in hexadecimal, over the canonical JSON of everything but the hash: {@code at}, {@code
   * body} as text, {@code by}, {@code kind}, {@code previous}, {@code sequence}, {@code subject}.
   */
  static String hashOf(Entry entry) {
    var text =
        CanonicalJson.write(
            Map.of(
                "at", entry.at(),
                "body", entry.body(),
                "by", entry.by(),
                "kind", entry.kind(),
                "previous", entry.previous(),
                "sequence", entry.sequence(),
                "subject", entry.subject()));
    return sha256(text);
  }

  /** Of the text's UTF-8, in hexadecimal. */
  static String sha256(String text) {
    try {
      var digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
