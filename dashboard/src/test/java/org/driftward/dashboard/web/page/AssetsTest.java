package org.driftward.dashboard.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class AssetsTest {

  private static final Path TEMPLATES = Path.of("src/main/resources/templates");
  private static final Pattern ASSET = Pattern.compile("\"/assets/([\\w.-]+)\\?v=");
  private static final Pattern LIBRARY = Pattern.compile("\"(/webjars/[\\w./-]+)\"");

  @Test
  void shouldCountEveryFileThatAPageNamesIntoTheVersion() {
    assertThat(named(ASSET)).isNotEmpty().isSubsetOf(Assets.FILES);
  }

  @Test
  void shouldShipEveryLibraryThatAPageNames() {
    assertThat(named(LIBRARY))
        .isNotEmpty()
        .allSatisfy(
            path -> assertThat(getClass().getResource("/META-INF/resources" + path)).isNotNull());
  }

  @Test
  void shouldNameAVersion() {
    assertThat(new Assets().version()).matches("[0-9a-f]{8}");
  }

  private static List<String> named(Pattern pattern) {
    try (var files = Files.list(TEMPLATES)) {
      return files
          .filter(Files::isRegularFile)
          .flatMap(file -> pattern.matcher(read(file)).results().map((MatchResult m) -> m.group(1)))
          .distinct()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
