package org.driftward.ingest.mapping;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.core.mapping.CodeRow;
import org.driftward.ingest.core.mapping.CodeTable;
import org.jspecify.annotations.Nullable;

/**
 * Reads a mapping from YAML: {@code codes}, a list of rows as in {@link CodeRow}, and {@code
 * units}, UCUM unit by foreign word.
 */
public final class CodeMapFile {

  private static final String SHIPPED = "/mapping/codes.yaml";

  private record Contents(@Nullable List<CodeRow> codes, @Nullable Map<String, String> units) {}

  private CodeMapFile() {}

  /**
   * The site's file; without one, the file that ships with the application, which is also the
   * example to begin from.
   *
   * @throws IllegalStateException if the file cannot be read or a row is broken, saying which: a
   *     house that means one thing and reads another must not start
   */
  public static CodeTable read(Catalogue catalogue, Optional<Path> file) {
    try (var in = open(file)) {
      var contents =
          JsonMapper.builder(new YAMLFactory())
              .findAndAddModules()
              .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
              .build()
              .readValue(in, Contents.class);
      return CodeTable.of(
          catalogue,
          contents.codes() == null ? List.of() : contents.codes(),
          contents.units() == null ? Map.of() : contents.units());
    } catch (JsonProcessingException | IllegalArgumentException e) {
      throw new IllegalStateException("code map: " + e.getMessage(), e);
    } catch (IOException e) {
      throw new UncheckedIOException("the code map cannot be read", e);
    }
  }

  private static InputStream open(Optional<Path> file) throws IOException {
    return file.isPresent()
        ? Files.newInputStream(file.get())
        : CodeMapFile.class.getResourceAsStream(SHIPPED);
  }
}
