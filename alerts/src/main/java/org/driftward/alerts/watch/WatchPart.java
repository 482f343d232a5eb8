package org.driftward.alerts.watch;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.UUID;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.store.StoredWatch;
import org.driftward.alerts.work.RepeatingPart;
import org.driftward.ingest.contract.RolePart;

/** Says for the pages of every process that this one raises and sends alarms. */
@Singleton
public class WatchPart extends RepeatingPart {

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
  protected void round() throws InterruptedException {
    watch.say(process, ailing.among(parts), desk.channelsOff());
    Thread.sleep(EVERY.toMillis());
  }
}
