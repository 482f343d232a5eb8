package org.driftward.deploy.embedded;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

/**
 * PostgreSQL's own programs, unpacked once from the archive on the class path that fits this
 * machine.
 */
final class PostgresPrograms {

  private static final Set<PosixFilePermission> PROGRAM =
      EnumSet.of(
          PosixFilePermission.OWNER_READ,
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.OWNER_EXECUTE,
          PosixFilePermission.GROUP_READ,
          PosixFilePermission.GROUP_EXECUTE,
          PosixFilePermission.OTHERS_READ,
          PosixFilePermission.OTHERS_EXECUTE);
  private static final int ANY_EXECUTE = 0111;

  private final Path home;

  private PostgresPrograms(Path home) {
    this.home = home;
  }

  /** Unpacks under the folder, into a folder named after the archive, unless it is there. */
  static PostgresPrograms under(Path folder) throws IOException {
    var archive = archive();
    var home = folder.resolve("programs-" + fingerprint(archive));
    if (!Files.isDirectory(home)) {
      var unfinished = Files.createTempDirectory(folder, "unpacking-");
      unpack(archive, unfinished);
      Files.setPosixFilePermissions(unfinished, PROGRAM);
      Files.move(unfinished, home, StandardCopyOption.ATOMIC_MOVE);
    }
    return new PostgresPrograms(home);
  }

  String path(String program) {
    return home.resolve("bin").resolve(program).toString();
  }

  private static byte[] archive() throws IOException {
    var system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    var name = system.startsWith("mac") ? "Darwin" : "Linux";
    try (var in =
        DefaultPostgresBinaryResolver.INSTANCE.getPgBinary(name, System.getProperty("os.arch"))) {
      return in.readAllBytes();
    }
  }

  private static String fingerprint(byte[] archive) {
    try {
      var digest = MessageDigest.getInstance("SHA-256").digest(archive);
      return HexFormat.of().formatHex(digest, 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  private static void unpack(byte[] archive, Path target) throws IOException {
    try (var tar =
        new TarArchiveInputStream(new XZCompressorInputStream(new ByteArrayInputStream(archive)))) {
      for (var entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
        unpack(tar, entry, target);
      }
    }
  }

  private static void unpack(TarArchiveInputStream tar, TarArchiveEntry entry, Path target)
      throws IOException {
    var path = target.resolve(entry.getName()).normalize();
    if (!path.startsWith(target)) {
      throw new IOException("The archive of PostgreSQL reaches outside its folder");
    }
    if (entry.isDirectory()) {
      Files.createDirectories(path);
      return;
    }
    Files.createDirectories(path.getParent());
    if (entry.isSymbolicLink()) {
      Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
    } else if (entry.isLink()) {
      Files.copy(target.resolve(entry.getLinkName()), path);
    } else {
      Files.copy(tar, path);
      if ((entry.getMode() & ANY_EXECUTE) != 0) {
        Files.setPosixFilePermissions(path, PROGRAM);
      }
    }
  }
}
