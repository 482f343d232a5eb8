package org.driftward.alerts.notify;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.core.outreach.Courier;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.store.Deliveries;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/**
 * Sends alarms out of the house, by each channel on threads of its own, so that a slow mail server
 * holds up no pager.
 */
@Singleton
public class AlarmSender implements RolePart {

  private static final Logger LOG = Logger.getLogger(AlarmSender.class);

  private final Deliveries deliveries;
  private final DeliveryDesk desk;
  private final AlertsConfig config;
  private final MeterRegistry registry;
  private final List<Worker> lanes = new ArrayList<>();

  public AlarmSender(
      Deliveries deliveries,
      DeliveryDesk desk,
      @Any Instance<Courier> couriers,
      Reach reach,
      AlertsConfig config,
      MeterRegistry registry) {
    this.deliveries = deliveries;
    this.desk = desk;
    this.config = config;
    this.registry = registry;
    for (var courier : couriers) {
      if (reach.runs(courier.channel())) {
        for (int lane = 1; lane <= config.senders(); lane++) {
          var name = name() + "-" + courier.channel().word() + "-" + lane;
          lanes.add(new Worker(name, config.longestBackOff(), () -> round(courier)));
        }
      }
    }
  }

  private Duration round(Courier courier) {
    var state = deliveries.attempt(courier.channel(), courier::carry);
    state.ifPresent(now -> count(courier.channel(), now));
    return state.isEmpty() ? config.outreach() : Duration.ZERO;
  }

  private void count(Channel channel, State state) {
    Counter.builder("driftward.deliveries")
        .description("Attempts to tell somebody of an alarm, by channel and what became of them")
        .tag("channel", channel.word())
        .tag("state", state.word())
        .register(registry)
        .increment();
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return "alarm-sender";
  }

  @Override
  public void start() {
    desk.channelsOff().forEach(words -> LOG.warnf("A channel is off: %s", words));
    lanes.forEach(Worker::start);
  }

  @Override
  public void stop() {
    lanes.forEach(Worker::stop);
  }

  @Override
  public Condition condition() {
    return Condition.of(lanes.stream().map(Worker::condition).toList());
  }
}
