package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The append-only, hash-chained record. Thread-safe, blocking. */
public interface Journal {

  /**
   * One entry.
   *
   * @param sequence 1, 2, 3 … without a gap
   * @param at when it happened
   * @param subject what it is about, for example {@code episode/E-1}
   * @param kind what happened
   * @param by account, or {@code driftward}
   * @param body canonical JSON of the details
   * @param previous hash of the entry before, in hexadecimal
   * @param hash SHA-256 over this entry and {@code previous}, in hexadecimal
   */
  record Entry(
      long sequence,
      Instant at,
      String subject,
      String kind,
      String by,
      String body,
      String previous,
      String hash) {
    public Entry {
      Objects.requireNonNull(at, "at");
      Objects.requireNonNull(subject, "subject");
      Objects.requireNonNull(hash, "hash");
    }

    @Override
    public String toString() {
      return "Entry[" + sequence + " " + kind + "]";
    }
  }

  /**
   * @param entries how many were recomputed
   * @param fault the first entry that does not hold, in words, or null if all do
   * @param at sequence of that entry, or null
   * @param head hash of the last entry, to be kept elsewhere as an anchor
   */
  record Verdict(long entries, @Nullable String fault, @Nullable Long at, String head) {
    public boolean sound() {
      return fault == null;
    }
  }

  List<Entry> after(long sequence, int limit);

  Verdict check();
}
