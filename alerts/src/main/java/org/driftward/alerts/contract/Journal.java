package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
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

  /**
   * The end of the journal at one time, kept where the database's owner cannot write. Anchors of
   * one file are chained to each other.
   *
   * @param sequence of the last entry then
   * @param head its hash
   * @param at when the anchor was made
   * @param previous seal of the anchor before, or 64 zeros
   * @param seal SHA-256 over the four above, in hexadecimal
   * @param signature over the seal, in Base64, or null where no key was at hand
   * @see AnchorSigner
   */
  record Anchor(
      long sequence,
      String head,
      Instant at,
      String previous,
      String seal,
      @Nullable String signature) {
    public Anchor {
      Objects.requireNonNull(head, "head");
      Objects.requireNonNull(at, "at");
      Objects.requireNonNull(previous, "previous");
      Objects.requireNonNull(seal, "seal");
    }

    /** The same, signed. */
    public Anchor signed(String by) {
      return new Anchor(sequence, head, at, previous, seal, by);
    }
  }

  List<Entry> after(long sequence, int limit);

  /** The newest entry; empty before the first. */
  Optional<Entry> last();

  Verdict check();
}
