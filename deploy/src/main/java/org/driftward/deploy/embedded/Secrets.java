package org.driftward.deploy.embedded;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;

/**
 * Random passwords between the embedded parts, kept in one file that only the owner reads. Nobody
 * ever types them, but for that of the account for feeds.
 */
public final class Secrets {

  private static final int BYTES = 24;

  private final Path file;
  private final Properties kept = new Properties();
  private final SecureRandom random = new SecureRandom();

  public Secrets(Path folder) throws IOException {
    this.file = folder.resolve("secrets.properties");
    if (Files.exists(file)) {
      kept.load(new StringReader(Files.readString(file)));
    }
  }

  /** The secret of that name; the first call makes it up and keeps it. */
  public synchronized String get(String name) throws IOException {
    var known = kept.getProperty(name);
    if (known != null) {
      return known;
    }
    var bytes = new byte[BYTES];
    random.nextBytes(bytes);
    var secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    kept.setProperty(name, secret);
    save();
    return secret;
  }

  private void save() throws IOException {
    var text = new StringWriter();
    kept.store(text, "Passwords between the embedded parts. Keep private.");
    var fresh = file.resolveSibling("secrets.new");
    Files.deleteIfExists(fresh);
    Files.createFile(
        fresh, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    Files.writeString(fresh, text.toString());
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
