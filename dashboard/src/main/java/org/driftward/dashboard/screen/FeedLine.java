package org.driftward.dashboard.screen;

import java.time.Duration;
import java.time.Instant;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.jspecify.annotations.Nullable;

/**
 * One feed in words.
 *
 * @param name who sends
 * @param way the way in
 * @param rate over the last five minutes
 * @param hour what the last hour brought
 * @param refused in the last hour
 * @param entered how long after it was true it was recorded
 * @param arrived how long after that it was accepted
 * @param since when it last brought anything
 * @param silence how long it has been silent, or empty while it is not
 */
public record FeedLine(
    String name,
    String way,
    String rate,
    String hour,
    long refused,
    String entered,
    String arrived,
    Instant since,
    String silence) {

  /** A ward is observed every hour or so; a feed that says nothing for longer may be down. */
  private static final Duration QUIET = Duration.ofHours(1);

  static FeedLine of(Feed feed, Instant now) {
    var quiet = Duration.between(feed.lastAt(), now);
    return new FeedLine(
        feed.origin(),
        IntakeWords.way(feed.source()),
        Wording.number(feed.perMinute(), 1) + " a minute",
        Wording.count(feed.assessments(), "assessment", "assessments")
            + ", "
            + Wording.count(feed.moves(), "bed move", "bed moves"),
        feed.refused(),
        lag(feed.entryLag()),
        lag(feed.arrivalLag()),
        feed.lastAt(),
        quiet.compareTo(QUIET) > 0 ? "silent for " + Wording.span(quiet) : "");
  }

  private static String lag(@Nullable Duration lag) {
    if (lag == null) {
      return "–";
    }
    return lag.compareTo(Duration.ofMinutes(1)) < 0
        ? Wording.number(lag.toMillis() / 1000.0, 1) + " s"
        : Wording.span(lag);
  }
}
