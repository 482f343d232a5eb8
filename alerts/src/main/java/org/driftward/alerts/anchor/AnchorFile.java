package org.driftward.alerts.anchor;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.JournalChain;
import org.driftward.ingest.contract.JsonFormat;
import org.jspecify.annotations.Nullable;

/** Anchors as NDJSON, oldest first, one file for each process. Used by one thread. */
public final class AnchorFile {

  private static final JsonFormat<Anchor> FORMAT = JsonFormat.of(Anchor.class);

  private final Path file;

  public AnchorFile(Path file) {
    this.file = file;
  }

  public List<Anchor> read() {
    if (!Files.exists(file)) {
      return List.of();
    }
    try {
      return Files.readAllLines(file).stream()
          .filter(line -> !line.isBlank())
          .map(line -> FORMAT.read(line.getBytes(StandardCharsets.UTF_8)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** On the disk when it returns; empty if the newest anchor knows the entry already. */
  public Optional<Anchor> append(Entry last, Instant now) {
    var before = read();
    @Nullable Anchor newest = before.isEmpty() ? null : before.get(before.size() - 1);
    if (newest != null && newest.head().equals(last.hash())) {
      return Optional.empty();
    }
    var anchor = JournalChain.anchor(newest, last, now);
    write(new String(FORMAT.write(anchor), StandardCharsets.UTF_8) + "\n");
    return Optional.of(anchor);
  }

  private void write(String line) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try (var channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
        var bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
          channel.write(bytes);
        }
        channel.force(true);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
