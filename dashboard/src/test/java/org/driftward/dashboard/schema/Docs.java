package org.driftward.dashboard.schema;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;

/** What the source says about a record and its components. */
final class Docs {

  private static final Path HOUSE = Path.of("..");

  private final String comment;

  Docs(Class<?> type) {
    var before = source(type).split("record " + type.getSimpleName() + "\\(", 2)[0];
    int end = before.lastIndexOf("*/");
    int start = before.lastIndexOf("/**");
    boolean own = start >= 0 && end > start && before.substring(end + 2).matches("(?s)[\\s\\w@]*");
    this.comment =
        own ? before.substring(start + 3, end).replaceAll("(?m)^\\s*\\* ?", "").strip() : "";
  }

  /** The first paragraph. */
  Optional<String> summary() {
    var text = plain(comment.split("(?m)^\\s*(<p>|@param|@see)", 2)[0]);
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  Optional<String> of(String component) {
    var matcher =
        Pattern.compile("(?ms)^@param " + component + "\\s(.*?)(?=^@|\\z)").matcher(comment);
    return matcher.find() ? Optional.of(plain(matcher.group(1))) : Optional.empty();
  }

  private static String plain(String text) {
    return text.replaceAll("\\{@(?:code|link|linkplain)\\s+#?([^}]*)}", "$1")
        .replaceAll("\\s+", " ")
        .strip();
  }

  private static String source(Class<?> type) {
    var top = type;
    while (top.getEnclosingClass() != null) {
      top = top.getEnclosingClass();
    }
    var module = top.getPackageName().split("\\.", 4)[2];
    var file =
        HOUSE
            .resolve(module)
            .resolve("src/main/java")
            .resolve(top.getName().replace('.', '/') + ".java");
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
