package org.driftward.alerts.watch;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.UUID;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.store.StoredWatch;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/** Says for the pages of every process that this one raises and sends alarms. */
@Singleton
public class WatchPart extends RepeatingPart implements RolePart {

  private static final Duration EVERY = Duration.ofSeconds(5);

  private final StoredWatch watch;
  private final DeliveryDesk desk;
  private final Iterable<RolePart> parts;
  private final Ailing ailing = new Ailing();
  private final String process = UUID.randomUUID().toString();

  public WatchPart(
      StoredWatch watch, DeliveryDesk desk, @Any Instance<RolePart> parts, AlertsConfig config) {
    super("watch", config.longestBackOff());
    this.watch = watch;
    this.desk = desk;
    this.parts = parts;
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public Duration run() {
    watch.say(process, ailing.among(parts), desk.channelsOff());
    return EVERY;
  }
}
