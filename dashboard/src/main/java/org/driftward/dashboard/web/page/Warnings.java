package org.driftward.dashboard.web.page;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.driftward.dashboard.core.SetAsideReader.Missing;
import org.driftward.dashboard.core.UnscoredReader.Unscored;
import org.driftward.dashboard.screen.Warning;
import org.driftward.dashboard.web.page.Events.Part;
import org.jspecify.annotations.Nullable;

/**
 * The warnings of one open page, which remembers what it was sent last. For one stream, whose
 * events follow one another. Blocking.
 */
final class Warnings {

  private final Lookout lookout;
  private final Predicate<Unscored> shown;
  private final Predicate<Missing> concerns;
  private @Nullable String sent;

  private Warnings(Lookout lookout, Predicate<Unscored> shown, Predicate<Missing> concerns) {
    this.lookout = lookout;
    this.shown = shown;
    this.concerns = concerns;
  }

  /**
   * Of a page about several patients.
   *
   * @param wards of the page, or null for all
   */
  static Warnings ofWards(@Nullable Set<String> wards, Lookout lookout) {
    return new Warnings(
        lookout,
        one -> wards == null || wards.contains(one.ward()),
        one -> wards == null || (one.ward() != null && wards.contains(one.ward())));
  }

  /** Of a page about one patient. */
  static Warnings ofPatient(String encounter, Lookout lookout) {
    return new Warnings(
        lookout,
        one -> one.encounter().equals(encounter),
        one -> encounter.equals(one.encounter()));
  }

  List<Warning> now() {
    var seen = lookout.now();
    var unscored = seen.unscored().stream().filter(shown).toList();
    var missing = seen.missing().stream().filter(concerns).toList();
    return Warning.of(seen.watch(), unscored, missing, seen.deaf());
  }

  /** What the page is to be sent, and the warnings with it unless it says them already. */
  List<Part> with(List<Part> parts) {
    return with(parts, null);
  }

  /**
   * As {@link #with(List)}.
   *
   * @param unread for how long the page could not be read anew; null if it could
   */
  List<Part> with(List<Part> parts, @Nullable Duration unread) {
    var warnings = new ArrayList<>(now());
    if (unread != null) {
      warnings.add(0, Warning.unread(unread));
    }
    var html = Pages.warnings(warnings).render();
    if (html.equals(sent)) {
      return parts;
    }
    sent = html;
    var all = new ArrayList<Part>(parts);
    all.add(new Part("warnings", html));
    return all;
  }
}
