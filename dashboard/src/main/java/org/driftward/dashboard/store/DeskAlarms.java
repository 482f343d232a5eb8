package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.core.PresentAlarms;

/** {@link PresentAlarms} of the desk that sends them. */
@ApplicationScoped
public class DeskAlarms implements PresentAlarms {

  private final DeliveryDesk desk;

  public DeskAlarms(DeliveryDesk desk) {
    this.desk = desk;
  }

  @Override
  public Map<String, List<Delivery>> of(Collection<String> episodes) {
    return desk.newest(episodes);
  }
}
