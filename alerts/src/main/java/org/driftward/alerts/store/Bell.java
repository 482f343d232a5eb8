package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Wakes whoever sends what this process has just written. Thread-safe. */
@Singleton
public class Bell {

  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

  /**
   * @param woken quick, and thread-safe
   */
  public void listen(Runnable woken) {
    listeners.add(woken);
  }

  public void ring() {
    listeners.forEach(Runnable::run);
  }
}
