package org.driftward.ingest.core.files;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a file whose header is not ours is read. Immutable.
 *
 * @param delimiter between the cells of a row
 * @param columns from the file's column names to ours; a name that is missing here is taken as ours
 * @param ignored names of columns to leave out; nothing is left out silently
 * @param values for a column of ours, from the file's words to ours
 * @param zone where the clock hung that wrote times without an offset; null if there are none
 * @param timePattern of such times, for example {@code dd.MM.uuuu HH:mm}; ISO 8601 by default
 * @param decimalComma whether 36,8 is 36.8
 */
public record FileMapping(
    char delimiter,
    Map<String, String> columns,
    List<String> ignored,
    Map<String, Map<String, String>> values,
    @Nullable ZoneId zone,
    @Nullable String timePattern,
    boolean decimalComma) {

  /** Our own header, as RFC 4180 writes it. */
  public static final FileMapping OWN =
      new FileMapping(',', Map.of(), List.of(), Map.of(), null, null, false);

  public FileMapping {
    new RecordCutter(delimiter);
    columns = Map.copyOf(columns);
    ignored = List.copyOf(ignored);
    values = Map.copyOf(values);
    if (timePattern != null) {
      if (zone == null) {
        throw new IllegalArgumentException("a pattern of times needs a zone");
      }
      formatter(timePattern);
    }
    if (decimalComma && delimiter == ',') {
      throw new IllegalArgumentException("a comma cannot be both delimiter and decimal sign");
    }
  }

  String column(String written) {
    return columns.getOrDefault(written, written);
  }

  String value(String column, String written) {
    return values.getOrDefault(column, Map.of()).getOrDefault(written, written);
  }

  String number(String written) {
    return decimalComma ? written.replace(',', '.') : written;
  }

  /**
   * The moment that a local time means.
   *
   * @return empty if it is none: the text is no such time, or the clocks went forward over it, or
   *     they went back and it came twice; which of the two is not guessed
   */
  Optional<Instant> local(String written) {
    if (zone == null) {
      return Optional.empty();
    }
    try {
      var local =
          timePattern == null
              ? LocalDateTime.parse(written.replace(' ', 'T'))
              : LocalDateTime.parse(written, formatter(timePattern));
      var offsets = zone.getRules().getValidOffsets(local);
      return offsets.size() == 1 ? Optional.of(local.toInstant(offsets.get(0))) : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static DateTimeFormatter formatter(String pattern) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ROOT)
        .withResolverStyle(ResolverStyle.STRICT);
  }
}
