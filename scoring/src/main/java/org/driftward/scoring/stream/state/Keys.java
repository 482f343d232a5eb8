package org.driftward.scoring.stream.state;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Instant;
import org.apache.kafka.common.utils.Bytes;
import org.driftward.scoring.core.timeline.Moment;
import org.jspecify.annotations.Nullable;

/**
 * The keys of one encounter in the store: its identifier, a letter for what is kept, and the rest.
 * The byte order of entries and of checkpoints is the order of their {@link Moment}s.
 */
final class Keys {

  private static final int FACTS = 'a';
  private static final int PLACE = 'p';
  private static final int ENTRY = 'e';
  private static final int CHECKPOINT = 'c';

  private final byte[] prefix;

  /** The length before the identifier keeps one encounter's keys from running into another's. */
  Keys(String encounter) {
    this.prefix = new ByteWriter(encounter.length() + 1).text(encounter).bytes();
  }

  /** The one record of facts. */
  Bytes facts() {
    return Bytes.wrap(kind(FACTS).bytes());
  }

  /** Where in clinical time an assessment stands. */
  Bytes place(String assessment) {
    return Bytes.wrap(kind(PLACE).raw(assessment.getBytes(UTF_8)).bytes());
  }

  Bytes entry(Moment moment) {
    return at(ENTRY, moment);
  }

  Bytes checkpoint(Moment moment) {
    return at(CHECKPOINT, moment);
  }

  /** No entry of the encounter has a lower key. */
  Bytes entriesFrom(@Nullable Moment moment) {
    return moment == null ? Bytes.wrap(kind(ENTRY).bytes()) : entry(moment);
  }

  /** Every entry of the encounter has a lower key. */
  Bytes entriesEnd() {
    return Bytes.wrap(kind(ENTRY + 1).bytes());
  }

  Bytes checkpointsFrom(@Nullable Moment moment) {
    return moment == null ? Bytes.wrap(kind(CHECKPOINT).bytes()) : checkpoint(moment);
  }

  Bytes checkpointsEnd() {
    return Bytes.wrap(kind(CHECKPOINT + 1).bytes());
  }

  /** Every key of the encounter is lower, and every key of the next one higher. */
  Bytes end() {
    return Bytes.wrap(kind(0xFF).bytes());
  }

  /** The encounter that a key belongs to. */
  static String encounter(Bytes key) {
    return new ByteReader(key.get(), 0).text();
  }

  /** The moment of an entry's or a checkpoint's key. */
  Moment moment(Bytes key) {
    var in = new ByteReader(key.get(), prefix.length + 1);
    return new Moment(time(in), new String(in.rest(), UTF_8));
  }

  /** A time as bytes that sort like it. */
  static byte[] time(Instant time) {
    return new ByteWriter(12)
        .fixed(time.getEpochSecond() ^ Long.MIN_VALUE)
        .fixed(time.getNano())
        .bytes();
  }

  static Instant time(ByteReader in) {
    long seconds = in.fixedLong() ^ Long.MIN_VALUE;
    return Instant.ofEpochSecond(seconds, in.fixedInt());
  }

  private Bytes at(int kind, Moment moment) {
    return Bytes.wrap(
        kind(kind).raw(time(moment.takenAt())).raw(moment.assessment().getBytes(UTF_8)).bytes());
  }

  private ByteWriter kind(int kind) {
    return new ByteWriter(prefix.length + 52).raw(prefix).octet(kind);
  }
}
