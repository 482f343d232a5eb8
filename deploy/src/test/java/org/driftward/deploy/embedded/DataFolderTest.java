package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {

  @TempDir Path temp;

  @Test
  void shouldRefuseASecondClaimAndNameTheWayOut() {
    try (var first = DataFolder.claim(temp.resolve("data"))) {
      assertThatExceptionOfType(StartException.class)
          .isThrownBy(() -> DataFolder.claim(first.root()))
          .withMessageContaining("Another process uses")
          .withMessageContaining("DRIFTWARD_DATA");
    }
  }

  @Test
  void shouldBeFreeAgainAfterItWasReleased() {
    DataFolder.claim(temp.resolve("data")).close();

    try (var again = DataFolder.claim(temp.resolve("data"))) {
      assertThat(again.root()).isDirectory();
    }
  }

  @Test
  void shouldOpenItsDoorToNobodyElse() throws IOException {
    try (var folder = DataFolder.claim(temp.resolve("data"))) {
      var permissions = Files.getPosixFilePermissions(folder.root());

      assertThat(PosixFilePermissions.toString(permissions)).isEqualTo("rwx------");
    }
  }

  @Test
  void shouldSayWhichFolderCannotBeWritten() throws IOException {
    var file = Files.writeString(temp.resolve("a-file"), "in the way");

    assertThatExceptionOfType(StartException.class)
        .isThrownBy(() -> DataFolder.claim(file))
        .withMessageContaining("a-file");
  }
}
