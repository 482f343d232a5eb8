package org.driftward.scoring.rescore;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.core.compare.Difference;

/** The differences of one re-scoring, one JSON object a line, in a file: they may be many. */
final class Report implements AutoCloseable {

  private static final JsonFormat<Difference> FORMAT = JsonFormat.of(Difference.class);

  private final BufferedWriter out;

  Report(Path file) throws IOException {
    Files.createDirectories(file.getParent());
    this.out = Files.newBufferedWriter(file);
  }

  void add(Difference difference) throws IOException {
    out.write(new String(FORMAT.write(difference), StandardCharsets.UTF_8));
    out.newLine();
  }

  /** The differences of a finished report; the caller closes the stream. */
  @SuppressWarnings("StreamResourceLeak")
  static Stream<Difference> read(Path file) {
    try {
      return Files.lines(file).map(line -> FORMAT.read(line.getBytes(StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
