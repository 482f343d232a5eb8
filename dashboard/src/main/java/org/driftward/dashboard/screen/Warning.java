package org.driftward.dashboard.screen;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.WatchDesk.Watch;
import org.driftward.dashboard.core.SetAsideReader.Missing;
import org.driftward.dashboard.core.UnscoredReader.Unscored;
import org.jspecify.annotations.Nullable;

/**
 * Why a page that looks quiet must not be trusted.
 *
 * @param what is wrong, a sentence
 * @param then what it means for whoever reads the page
 */
public record Warning(String what, String then) {

  private static final String BY_HAND =
      "Watch the patients as if this page were switched off, and call for help the way your"
          + " hospital does without it.";

  private static final int MOST_PLACES = 8;

  /**
   * The most dangerous first; usually none.
   *
   * @param unscored of the wards that the page shows
   * @param missing what was set aside that concerns the wards that the page shows
   * @param deaf how long this process has read nothing that is new; null while it reads
   */
  public static List<Warning> of(
      Watch watch, List<Unscored> unscored, List<Missing> missing, @Nullable Duration deaf) {
    var warnings = new ArrayList<Warning>();
    if (!watch.heard()) {
      warnings.add(new Warning(unwatched(watch.silence()), BY_HAND));
    }
    if (deaf != null) {
      warnings.add(
          new Warning(
              "Nothing new has reached this page for " + Wording.span(deaf) + ".", BY_HAND));
    }
    if (!watch.failing().isEmpty()) {
      warnings.add(
          new Warning(
              "Alarms may come late or not at all: part of what raises and sends them fails ("
                  + String.join(", ", watch.failing())
                  + ").",
              BY_HAND));
    }
    if (!unscored.isEmpty()) {
      warnings.add(unscored(unscored));
    }
    var byMeaning = new LinkedHashMap<String, Set<String>>();
    missing.forEach(
        one ->
            byMeaning
                .computeIfAbsent(one.means(), means -> new LinkedHashSet<>())
                .add(place(one.ward(), one.bed())));
    byMeaning.forEach((means, places) -> warnings.add(missing(means, places)));
    return List.copyOf(warnings);
  }

  private static String unwatched(@Nullable Duration silence) {
    return "No alarm is raised or sent: the part of Driftward that does so "
        + (silence == null
            ? "has not shown itself."
            : "last showed itself " + Wording.span(silence) + " ago.");
  }

  /** Of a page that goes on saying what it said last. */
  public static Warning unread(Duration since) {
    return new Warning(
        "This page could not be read anew for "
            + Wording.span(since)
            + " and shows what it showed.",
        BY_HAND);
  }

  private static Warning unscored(List<Unscored> unscored) {
    var places = unscored.stream().map(one -> place(one.ward(), one.bed())).toList();
    return new Warning(
        "What was recorded last has not been scored: " + list(places),
        "What is shown of them may be older. Look at them, and score on paper.");
  }

  private static Warning missing(String means, Set<String> places) {
    return new Warning(means + " This concerns " + list(places), BY_HAND);
  }

  private static String list(Collection<String> places) {
    int more = Math.max(0, places.size() - MOST_PLACES);
    return places.stream().limit(MOST_PLACES).collect(Collectors.joining(", "))
        + (more == 0 ? "." : " and " + Wording.count(more, "patient", "patients") + " more.");
  }

  private static String place(@Nullable String ward, @Nullable String bed) {
    if (ward == null) {
      return "somebody whose ward is not known";
    }
    return bed == null ? "a patient without a bed on " + ward : ward + " bed " + bed;
  }
}
