package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.screen.Telling;
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
    return Telling.of(desk.tones(wards), warnings(wards).now(), lookout.now().watch().off());
  }

  Part part(@Nullable Set<String> wards) {
    return new Part("tones", Pages.tones(of(wards)).render());
  }

  /** As {@link #of}, for one stream. */
  Warnings warnings(@Nullable Set<String> wards) {
    return Warnings.ofWards(wards, lookout);
  }
}
