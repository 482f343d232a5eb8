package org.driftward.deploy.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Writes what nobody but its owner may read. */
final class KeyFile {

  private KeyFile() {}

  /**
   * @throws java.nio.file.FileAlreadyExistsException if there is such a file: a key in use must not
   *     be lost
   */
  static void write(Path file, String text) throws IOException {
    boolean posix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
    var ownerOnly =
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));
    Files.createFile(file, posix ? new FileAttribute<?>[] {ownerOnly} : new FileAttribute<?>[0]);
    Files.writeString(file, text);
  }
}
