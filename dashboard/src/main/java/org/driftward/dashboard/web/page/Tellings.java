package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.screen.Telling;
import org.driftward.dashboard.screen.Warning;
import org.driftward.dashboard.web.page.Events.Part;
import org.jspecify.annotations.Nullable;

/** What a live page sounds and what it warns of. Blocking. */
@ApplicationScoped
class Tellings {

  private final DeliveryDesk desk;
  private final Lookout lookout;

  Tellings(DeliveryDesk desk, Lookout lookout) {
    this.desk = desk;
    this.lookout = lookout;
  }

  /**
   * @param wards of the page, or null for all
   */
  Telling of(@Nullable Set<String> wards) {
    return Telling.of(desk.tones(wards), warned(wards), lookout.now().watch().off());
  }

  Part part(@Nullable Set<String> wards) {
    return new Part("tones", Pages.tones(of(wards)).render());
  }

  private List<Warning> warned(@Nullable Set<String> wards) {
    var seen = lookout.now();
    var unscored =
        seen.unscored().stream()
            .filter(one -> wards == null || wards.contains(one.ward()))
            .toList();
    return Warning.of(seen.watch(), unscored, seen.deaf());
  }

  /** The warnings of one open page. */
  Warnings warnings(@Nullable Set<String> wards) {
    return new Warnings(wards);
  }

  /** Remembers what the page was sent last. For one stream, whose events follow one another. */
  final class Warnings {

    private final @Nullable Set<String> wards;
    private @Nullable String sent;

    private Warnings(@Nullable Set<String> wards) {
      this.wards = wards;
    }

    /** Empty where the page says so already. */
    List<Part> news() {
      var html = Pages.warnings(warned(wards)).render();
      if (html.equals(sent)) {
        return List.of();
      }
      sent = html;
      return List.of(new Part("warnings", html));
    }
  }
}
