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
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.JournalChain;
import org.driftward.ingest.contract.JsonFormat;
import org.jspecify.annotations.Nullable;

/** Anchors as NDJSON, oldest first, one file for each process. Used by one thread. */
public final class AnchorFile {

  private static final JsonFormat<Anchor> FORMAT = JsonFormat.of(Anchor.class);

  private final Path file;
  private final @Nullable AnchorSigner signer;

  /**
   * @param signer of each anchor, or null to chain them only
   */
  public AnchorFile(Path file, @Nullable AnchorSigner signer) {
    this.file = file;
    this.signer = signer;
  }

  public List<Anchor> read() {
    return whole()
        .lines()
        .filter(line -> !line.isBlank())
        .map(line -> FORMAT.read(line.getBytes(StandardCharsets.UTF_8)))
        .toList();
  }

  /** On the disk when it returns; empty if the newest anchor knows the entry already. */
  public Optional<Anchor> append(Entry last, Instant now) {
    var before = read();
    @Nullable Anchor newest = before.isEmpty() ? null : before.get(before.size() - 1);
    if (newest != null && newest.head().equals(last.hash())) {
      return Optional.empty();
    }
    var chained = JournalChain.anchor(newest, last, now);
    var anchor = signer == null ? chained : signer.sign(chained);
    write(new String(FORMAT.write(anchor), StandardCharsets.UTF_8) + "\n");
    return Optional.of(anchor);
  }

  /** Up to the last end of a line: what a power cut tore off was never kept. */
  private String whole() {
    try {
      var text = Files.exists(file) ? Files.readString(file) : "";
      return text.substring(0, text.lastIndexOf('\n') + 1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void write(String line) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      long end = whole().getBytes(StandardCharsets.UTF_8).length;
      try (var channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
        channel.truncate(end).position(end);
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
