package org.driftward.dashboard.core;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.Delivery;

/** Reads how the present alarm of each episode reaches whom. Thread-safe, blocking. */
@FunctionalInterface
public interface PresentAlarms {

  /** By episode; no entry where nothing is to leave the house. */
  Map<String, List<Delivery>> of(Collection<String> episodes);
}
