package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;

/** Reads which sources a ward has heard of. Thread-safe, blocking. */
public interface FeedReader {

  /** Sources of what was taken on the ward's present patients since then, by name. */
  List<Feed> feeds(String ward, Instant since);
}
