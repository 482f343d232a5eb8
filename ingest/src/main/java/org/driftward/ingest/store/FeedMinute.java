package org.driftward.ingest.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import org.driftward.ingest.contract.Assessment.Source;

/**
 * What one feed brought in one minute, or a part of it.
 *
 * @param entryLag milliseconds from taken to recorded, summed over the assessments
 * @param arrivalLag milliseconds from recorded to accepted, likewise
 */
public record FeedMinute(
    Key key,
    long assessments,
    long moves,
    long refused,
    long entryLag,
    long arrivalLag,
    Instant lastAt)
    implements Comparable<FeedMinute> {

  /** Which feed, which minute. */
  public record Key(Source source, String origin, Instant minute) {
    static Key of(Source source, String origin, Instant at) {
      return new Key(source, origin, at.truncatedTo(ChronoUnit.MINUTES));
    }
  }

  private static final Comparator<FeedMinute> ORDER =
      Comparator.comparing((FeedMinute each) -> each.key().source())
          .thenComparing(each -> each.key().origin())
          .thenComparing(each -> each.key().minute());

  public static FeedMinute assessment(
      Source source, String origin, Instant takenAt, Instant recordedAt, Instant acceptedAt) {
    return new FeedMinute(
        Key.of(source, origin, acceptedAt),
        1,
        0,
        0,
        millis(takenAt, recordedAt),
        millis(recordedAt, acceptedAt),
        acceptedAt);
  }

  public static FeedMinute move(Source source, String origin, Instant at) {
    return new FeedMinute(Key.of(source, origin, at), 0, 1, 0, 0, 0, at);
  }

  public static FeedMinute refused(Source source, String origin, Instant at) {
    return new FeedMinute(Key.of(source, origin, at), 0, 0, 1, 0, 0, at);
  }

  public FeedMinute plus(FeedMinute other) {
    return new FeedMinute(
        key,
        assessments + other.assessments,
        moves + other.moves,
        refused + other.refused,
        entryLag + other.entryLag,
        arrivalLag + other.arrivalLag,
        lastAt.isAfter(other.lastAt) ? lastAt : other.lastAt);
  }

  /** A sender's clock may run ahead of ours; such a lag counts as none. */
  private static long millis(Instant from, Instant to) {
    return Math.max(0, ChronoUnit.MILLIS.between(from, to));
  }

  @Override
  public int compareTo(FeedMinute other) {
    return ORDER.compare(this, other);
  }
}
