package org.driftward.scoring.definition;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.core.score.ScoreDefinition;

/** The score definitions that ship with the application, and those a hospital adds. */
public final class ScoreBooks {

  private static final List<String> SHIPPED =
      List.of(
          "news2",
          "pews-brighton",
          "maternal-trigger",
          "mews",
          "qsofa",
          "sirs",
          "shock-index",
          "modified-shock-index",
          "rox",
          "gcs",
          "kdigo-urine");

  private ScoreBooks() {}

  /**
   * @throws BrokenDefinitionException naming file and line
   */
  public static ScoreBook shipped(Catalogue catalogue) {
    return read(List.of(), catalogue);
  }

  /**
   * The shipped definitions with a hospital's own. One with the id of a shipped score takes its
   * place.
   *
   * @param extra files, or directories whose {@code .yaml} files are read
   * @throws BrokenDefinitionException naming file and line
   */
  public static ScoreBook read(List<Path> extra, Catalogue catalogue) {
    var reader = new DefinitionReader(catalogue);
    var byId = new LinkedHashMap<String, ScoreDefinition>();
    for (var name : SHIPPED) {
      var definition = shipped(name, reader);
      byId.put(definition.id(), definition);
    }
    var own = new HashMap<String, Path>();
    for (var path : files(extra)) {
      var definition = own(path, reader);
      var other = own.put(definition.id(), path);
      if (other != null) {
        throw new BrokenDefinitionException(
            path.toString(), 1, definition.id() + " is also defined in " + other);
      }
      byId.put(definition.id(), definition);
    }
    return new ScoreBook(List.copyOf(byId.values()));
  }

  /**
   * The definitions of {@code base} with those of some texts; one with the id of another takes its
   * place.
   *
   * @param texts contents of definition files
   * @throws BrokenDefinitionException naming the text by its number from 1, and the line
   */
  public static ScoreBook with(ScoreBook base, List<String> texts, Catalogue catalogue) {
    var reader = new DefinitionReader(catalogue);
    var byId = new LinkedHashMap<String, ScoreDefinition>();
    base.definitions().forEach(definition -> byId.put(definition.id(), definition));
    for (int i = 0; i < texts.size(); i++) {
      var definition = reader.read("score " + (i + 1), new StringReader(texts.get(i)));
      byId.put(definition.id(), definition);
    }
    return new ScoreBook(List.copyOf(byId.values()));
  }

  private static List<Path> files(List<Path> paths) {
    var files = new ArrayList<Path>();
    for (var path : paths) {
      if (!Files.isDirectory(path)) {
        files.add(path);
        continue;
      }
      try (var children = Files.list(path)) {
        children.filter(child -> child.toString().endsWith(".yaml")).sorted().forEach(files::add);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return files;
  }

  private static ScoreDefinition own(Path path, DefinitionReader reader) {
    try (var text = Files.newBufferedReader(path)) {
      return reader.read(path.toString(), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ScoreDefinition shipped(String name, DefinitionReader reader) {
    var resource = "/scores/" + name + ".yaml";
    var stream = Objects.requireNonNull(ScoreBooks.class.getResourceAsStream(resource), resource);
    try (var text = new InputStreamReader(stream, StandardCharsets.UTF_8)) {
      return reader.read(resource, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
