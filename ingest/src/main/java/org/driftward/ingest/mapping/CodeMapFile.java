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
import org.driftward.ingest.core.mapping.CodeRows;
import org.driftward.ingest.core.mapping.CodeRules;
import org.driftward.ingest.core.mapping.CodeTable;

/** Reads a mapping from YAML, written as {@link CodeRows} says. */
public final class CodeMapFile {

  private static final String SHIPPED = "/mapping/codes.yaml";

  private CodeMapFile() {}

  /**
   * The site's own file.
   *
   * @throws IllegalStateException if the file cannot be read or a row is broken, saying which: a
   *     house that means one thing and reads another must not start
   */
  public static CodeTable read(CodeRules rules, Path file) {
    try (var in = Files.newInputStream(file)) {
      return read(rules, in);
    } catch (IOException e) {
      throw new UncheckedIOException("the code map cannot be read", e);
    }
  }

  /** The file that ships with the application, which is also the example to begin from. */
  public static CodeTable shipped(CodeRules rules) {
    try (var in = CodeMapFile.class.getResourceAsStream(SHIPPED)) {
      return read(rules, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CodeTable read(CodeRules rules, InputStream in) throws IOException {
    try {
      CodeRows rows =
          JsonMapper.builder(new YAMLFactory())
              .findAndAddModules()
              .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
              .build()
              .readValue(in, CodeRows.class);
      return CodeTable.of(rules, rows == null ? CodeRows.NONE : rows);
    } catch (JsonProcessingException | IllegalArgumentException e) {
      throw new IllegalStateException("code map: " + e.getMessage(), e);
    }
  }
}
