package org.driftward.dashboard.fhir;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import org.driftward.dashboard.core.MomentReader.Mark;
import org.jspecify.annotations.Nullable;

/**
 * What a search asks for.
 *
 * @param encounter the hospital's number of the stay
 * @param codes as they were asked, for the links
 * @param dates as they were asked, for the links
 * @param count Observations of one page
 * @param start where the page begins, or null for the newest
 */
record Search(
    String encounter,
    List<String> codes,
    List<String> dates,
    DateFilter dateFilter,
    int count,
    @Nullable Start start) {

  static final int USUAL_COUNT = 100;
  static final int MOST = 1000;

  /**
   * A page's first Observation.
   *
   * @param index among those of the assessment
   */
  record Start(Mark mark, int index) {

    /** Opaque to the caller, who only sends it back. */
    String token() {
      var text = mark.takenAt() + " " + index + " " + mark.assessment();
      return Base64.getUrlEncoder()
          .withoutPadding()
          .encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    static Start of(String token) {
      try {
        var text = new String(Base64.getUrlDecoder().decode(token), StandardCharsets.UTF_8);
        var parts = text.split(" ", 3);
        return new Start(
            new Mark(Instant.parse(parts[0]), parts[2]), Integer.parseUnsignedInt(parts[1]));
      } catch (IllegalArgumentException | DateTimeException | IndexOutOfBoundsException e) {
        throw new IllegalArgumentException("page is taken from the link of the page before", e);
      }
    }
  }

  /**
   * @throws IllegalArgumentException with a message for the caller
   */
  static Search of(
      @Nullable String encounter,
      List<String> codes,
      List<String> dates,
      @Nullable String count,
      @Nullable String page) {
    var number = encounter == null ? "" : encounter.substring(encounter.lastIndexOf('|') + 1);
    number = number.startsWith("Encounter/") ? number.substring("Encounter/".length()) : number;
    if (number.isBlank()) {
      throw new IllegalArgumentException("encounter is needed: the hospital's number of the stay");
    }
    return new Search(
        number,
        List.copyOf(codes),
        List.copyOf(dates),
        DateFilter.of(dates),
        count(count),
        page == null ? null : Start.of(page));
  }

  private static int count(@Nullable String count) {
    if (count == null) {
      return USUAL_COUNT;
    }
    if (!count.matches("[1-9][0-9]{0,8}")) {
      throw new IllegalArgumentException("_count is a number from 1");
    }
    return Math.min(MOST, Integer.parseInt(count));
  }
}
