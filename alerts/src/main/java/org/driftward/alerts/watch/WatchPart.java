package org.driftward.alerts.watch;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.store.StoredWatch;
import org.driftward.alerts.work.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/**
 * Says for the pages of every process that this one raises and sends alarms. A part counts as
 * failing when it does so twice running, as one failure mends itself before a person would notice.
 */
@Singleton
public class WatchPart extends RepeatingPart {

  private static final Duration EVERY = Duration.ofSeconds(5);

  private final StoredWatch watch;
  private final DeliveryDesk desk;
  private final Iterable<RolePart> parts;
  private final String process = UUID.randomUUID().toString();
  private Set<String> illBefore = Set.of();

  public WatchPart(
      StoredWatch watch, DeliveryDesk desk, @Any Instance<RolePart> parts, AlertsConfig config) {
    super("watch", config.longestBackOff());
    this.watch = watch;
    this.desk = desk;
    this.parts = parts;
  }

  @Override
  protected void round() throws InterruptedException {
    var ill = new HashSet<String>();
    for (var part : parts) {
      if (part.role() == Role.ALERTS && !part.condition().well()) {
        ill.add(part.name());
      }
    }
    var failing = new HashSet<>(ill);
    failing.retainAll(illBefore);
    illBefore = ill;
    watch.say(process, failing, desk.channelsOff());
    Thread.sleep(EVERY.toMillis());
  }
}
