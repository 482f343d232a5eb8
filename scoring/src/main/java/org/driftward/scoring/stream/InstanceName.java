package org.driftward.scoring.stream;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;

/**
 * Who this process is to its consumer group, the same after a restart on the same state folder. A
 * process of Kafka Streams does not leave its group when it stops, so without a name that it comes
 * back with, its own old session keeps it waiting.
 */
final class InstanceName {

  private InstanceName() {}

  /** The name kept in the folder; made up at the first start. */
  static String in(Path folder) {
    var file = folder.resolve("instance");
    try {
      if (!Files.exists(file)) {
        Files.createDirectories(folder);
        Files.writeString(file, UUID.randomUUID() + "\n");
      }
      return Files.readString(file).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
