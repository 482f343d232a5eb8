package org.driftward.dashboard.screen;

import io.quarkus.qute.Engine;
import io.quarkus.qute.HtmlEscaper;
import io.quarkus.qute.ReflectionValueResolver;
import io.quarkus.qute.TemplateLocator.TemplateLocation;
import io.quarkus.qute.UserTagSectionHelper;
import io.quarkus.qute.Variant;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The templates as they ship, on a plain template engine that fails on whatever is not there. */
final class Rendering {

  private static final List<String> TAGS =
      List.of(
          "act",
          "arrow",
          "countdown",
          "drift",
          "field",
          "finding",
          "moving",
          "region",
          "sign",
          "token",
          "trail");

  private static final Engine ENGINE = engine();

  private Rendering() {}

  static String html(String template, Map<String, Object> data) {
    return ENGINE.getTemplate(template).render(data);
  }

  private static Engine engine() {
    var builder =
        Engine.builder()
            .addDefaults()
            .addValueResolver(new ReflectionValueResolver())
            .addResultMapper(new HtmlEscaper(List.of(Variant.TEXT_HTML)))
            .strictRendering(true)
            .addLocator(Rendering::locate);
    TAGS.forEach(
        tag ->
            builder.addSectionHelper(
                new UserTagSectionHelper.Factory(tag, "tags/" + tag + ".html")));
    return builder.build();
  }

  private static Optional<TemplateLocation> locate(String id) {
    String path = "templates/" + (id.endsWith(".html") ? id : id + ".html");
    try (var in = Rendering.class.getClassLoader().getResourceAsStream(path)) {
      return in == null
          ? Optional.empty()
          : Optional.of(location(new String(in.readAllBytes(), StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static TemplateLocation location(String text) {
    return new TemplateLocation() {
      @Override
      public Reader read() {
        return new StringReader(text);
      }

      @Override
      public Optional<Variant> getVariant() {
        return Optional.of(Variant.forContentType(Variant.TEXT_HTML));
      }
    };
  }
}
