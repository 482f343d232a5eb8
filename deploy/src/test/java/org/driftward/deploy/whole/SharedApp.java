package org.driftward.deploy.whole;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Starts the shared application when the first test asks for it; it ends with the last. */
final class SharedApp implements ParameterResolver {

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    return parameter.getParameter().getType() == RunningApp.class;
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
    return context
        .getRoot()
        .getStore(Namespace.create(SharedApp.class))
        .computeIfAbsent("app", key -> Shared.start(), Shared.class)
        .app();
  }

  /** The application and its temporary folder. JUnit closes it. */
  record Shared(RunningApp app, Path folder) implements AutoCloseable {

    static Shared start() {
      try {
        var folder = Files.createTempDirectory("driftward-it-");
        return new Shared(RunningApp.start(folder.resolve("data")), folder);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void close() throws IOException {
      app.close();
      try (var paths = Files.walk(folder)) {
        for (var path : paths.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }
}
