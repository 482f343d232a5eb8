package org.driftward.deploy.time;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.Optional;

/** The record as one line of a file, replaced as a whole. */
final class ClockFile implements ClockRecord {

  private final Path file;

  ClockFile(Path file) {
    this.file = file;
  }

  @Override
  public Optional<Instant> read() {
    try {
      return Files.exists(file)
          ? Optional.of(Instant.parse(Files.readString(file).strip()))
          : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void write(Instant instant) {
    var fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.writeString(fresh, instant + "\n");
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
