package org.driftward.ingest.store;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** The encoding that a media type names, for example {@code text/csv; charset=ISO-8859-1}. */
public final class MediaCharset {

  private static final String PARAMETER = "charset=";

  private MediaCharset() {}

  /** UTF-8 where none, or none that we know, is named. */
  public static Charset of(String contentType) {
    return named(contentType).orElse(StandardCharsets.UTF_8);
  }

  private static Optional<Charset> named(String contentType) {
    int at = contentType.toLowerCase(Locale.ROOT).indexOf(PARAMETER);
    if (at < 0) {
      return Optional.empty();
    }
    var rest = contentType.substring(at + PARAMETER.length());
    int end = rest.indexOf(';');
    var name = (end < 0 ? rest : rest.substring(0, end)).replace("\"", "").strip();
    try {
      return Optional.of(Charset.forName(name));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
