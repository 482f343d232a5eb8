package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SecretsTest {

  @TempDir Path folder;

  @Test
  void shouldKeepWhatItMadeUp() throws IOException {
    var first = new Secrets(folder).get("one");

    assertThat(new Secrets(folder).get("one")).isEqualTo(first);
  }

  @Test
  void shouldMakeUpADifferentOneForEachName() throws IOException {
    var secrets = new Secrets(folder);

    assertThat(secrets.get("one")).hasSize(32).isNotEqualTo(secrets.get("two"));
  }

  @Test
  void shouldShowTheFileToItsOwnerOnly() throws IOException {
    new Secrets(folder).get("one");

    var permissions = Files.getPosixFilePermissions(folder.resolve("secrets.properties"));

    assertThat(PosixFilePermissions.toString(permissions)).isEqualTo("rw-------");
  }
}
