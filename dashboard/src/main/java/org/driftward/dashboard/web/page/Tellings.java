package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.screen.Telling;
import org.driftward.dashboard.web.page.Events.Part;
import org.jspecify.annotations.Nullable;

/** What a live page sounds. Blocking. */
@ApplicationScoped
class Tellings {

  private final DeliveryDesk desk;

  Tellings(DeliveryDesk desk) {
    this.desk = desk;
  }

  /**
   * @param wards of the page, or null for all
   */
  Telling of(@Nullable Set<String> wards) {
    return Telling.of(desk.tones(wards), desk.channelsOff());
  }

  Part part(@Nullable Set<String> wards) {
    return new Part("tones", Pages.tones(of(wards)).render());
  }
}
