package org.driftward.deploy.embedded;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * The folder of everything this process must find again. Two processes on one folder would destroy
 * each other's data, so the folder is claimed with a lock that the operating system releases even
 * after a crash.
 */
public final class DataFolder implements AutoCloseable {

  private final Path root;
  private final FileChannel lock;

  private DataFolder(Path root, FileChannel lock) {
    this.root = root;
    this.lock = lock;
  }

  /**
   * Creates the folder where it is missing, and claims it.
   *
   * @throws StartException if another process has it, or it cannot be written
   */
  public static DataFolder claim(Path path) {
    var root = path.toAbsolutePath().normalize();
    try {
      create(root);
      var channel =
          FileChannel.open(
              root.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!locked(channel)) {
        channel.close();
        throw new StartException(
            "Another process uses the data folder "
                + root
                + ". Stop it first, or set DRIFTWARD_DATA to another folder.");
      }
      return new DataFolder(root, channel);
    } catch (IOException e) {
      throw new StartException("The data folder " + root + " cannot be written: " + e, e);
    }
  }

  /** Only the owner may look into a folder that will hold patients' data. */
  private static void create(Path root) throws IOException {
    if (!Files.isDirectory(root)) {
      Files.createDirectories(root);
      Files.setPosixFilePermissions(root, PosixFilePermissions.fromString("rwx------"));
    }
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  public Path root() {
    return root;
  }

  /** A folder inside, created where it is missing. */
  public Path folder(String name) throws IOException {
    return Files.createDirectories(root.resolve(name));
  }

  @Override
  public void close() {
    try {
      lock.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
