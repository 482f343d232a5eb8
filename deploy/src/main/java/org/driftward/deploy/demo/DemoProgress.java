package org.driftward.deploy.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Properties;

/**
 * How far the demo has come, kept in a file so that a restart goes on where it stopped.
 *
 * @param began ward time of the beginning of the live part
 * @param sentUntil every set up to this ward time is in
 */
record DemoProgress(Instant began, Instant sentUntil) {

  /** Older than the first set of any course. */
  private static final Duration HISTORY = Duration.ofHours(40);

  static DemoProgress load(Path file, Instant now) {
    if (!Files.exists(file)) {
      return new DemoProgress(now, now.minus(HISTORY));
    }
    try (var in = Files.newBufferedReader(file)) {
      var kept = new Properties();
      kept.load(in);
      return new DemoProgress(
          Instant.parse(kept.getProperty("began")), Instant.parse(kept.getProperty("sent-until")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  DemoProgress sentUntil(Instant time) {
    return new DemoProgress(began, time);
  }

  /** Written beside and moved into place, so that a crash leaves the old or the new file. */
  void save(Path file) {
    var kept = new Properties();
    kept.setProperty("began", began.toString());
    kept.setProperty("sent-until", sentUntil.toString());
    var beside = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try (var out = Files.newBufferedWriter(beside)) {
        kept.store(out, null);
      }
      move(beside, file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
