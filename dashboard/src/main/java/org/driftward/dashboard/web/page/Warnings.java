package org.driftward.dashboard.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
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
  private @Nullable String sent;

  private Warnings(Lookout lookout, Predicate<Unscored> shown) {
    this.lookout = lookout;
    this.shown = shown;
  }

  /**
   * Of a page about several patients.
   *
   * @param wards of the page, or null for all
   */
  static Warnings ofWards(@Nullable Set<String> wards, Lookout lookout) {
    return new Warnings(lookout, one -> wards == null || wards.contains(one.ward()));
  }

  /** Of a page about one patient. */
  static Warnings ofPatient(String encounter, Lookout lookout) {
    return new Warnings(lookout, one -> one.encounter().equals(encounter));
  }

  List<Warning> now() {
    var seen = lookout.now();
    var unscored = seen.unscored().stream().filter(shown).toList();
    return Warning.of(seen.watch(), unscored, seen.deaf());
  }

  /** What the page is to be sent, and the warnings with it unless it says them already. */
  List<Part> with(List<Part> parts) {
    var html = Pages.warnings(now()).render();
    if (html.equals(sent)) {
      return parts;
    }
    sent = html;
    var all = new ArrayList<Part>(parts);
    all.add(new Part("warnings", html));
    return all;
  }
}
