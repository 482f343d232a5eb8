package org.driftward.dashboard.stream;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.driftward.dashboard.core.WardNews;

/** Passes the news of a ward on to whoever listens in this process. Thread-safe. */
@ApplicationScoped
public class WardMulticaster implements WardNews {

  /** Its identity is what counts: the same callback may listen twice. */
  private static final class Ear {
    private final Runnable changed;

    Ear(Runnable changed) {
      this.changed = changed;
    }
  }

  private final Map<String, Set<Ear>> ears = new ConcurrentHashMap<>();

  @Override
  public Listening listen(String ward, Runnable changed) {
    var ear = new Ear(changed);
    ears.compute(
        ward,
        (key, present) -> {
          var all = present == null ? ConcurrentHashMap.<Ear>newKeySet() : present;
          all.add(ear);
          return all;
        });
    return () ->
        ears.computeIfPresent(
            ward,
            (key, present) -> {
              present.remove(ear);
              return present.isEmpty() ? null : present;
            });
  }

  void changed(String ward) {
    ears.getOrDefault(ward, Set.of()).forEach(ear -> ear.changed.run());
  }

  /** News may have been missed: every ward may have changed. */
  void everythingMayHaveChanged() {
    ears.values().forEach(all -> all.forEach(ear -> ear.changed.run()));
  }
}
