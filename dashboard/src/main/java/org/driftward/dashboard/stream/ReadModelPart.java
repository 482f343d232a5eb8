package org.driftward.dashboard.stream;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.CooperativeStickyAssignor;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ground.kafka.GroupReader;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;

/** Reads the topics into the read model. All processes of the cluster share the work. */
@ApplicationScoped
public class ReadModelPart implements RolePart {

  static final String NAME = "read-model";
  private static final String GROUP = "driftward-dashboard";
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(15);

  private final KafkaAccess access;
  private final DashboardConfig config;
  private final BatchKeeper keeper;
  private final BoardMetrics metrics;
  private volatile List<GroupReader> readers = List.of();

  public ReadModelPart(
      KafkaAccess access,
      ReadModel model,
      DashboardConfig config,
      BoardMetrics metrics,
      Quarantine quarantine) {
    this.access = access;
    this.config = config;
    this.keeper = new BatchKeeper(model, metrics, quarantine);
    this.metrics = metrics;
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public void start() {
    var started = new ArrayList<GroupReader>();
    for (int i = 1; i <= config.readers(); i++) {
      var reader = reader(GROUP + "-" + i);
      started.add(reader);
      reader.start();
    }
    readers = List.copyOf(started);
  }

  private GroupReader reader(String name) {
    var sticky =
        Map.<String, Object>of(
            ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG,
            CooperativeStickyAssignor.class.getName());
    var topics = RecordReader.TOPICS.stream().map(Topic::topic).toList();
    var watched = new Watched(name);
    return new GroupReader(
        name, GROUP, access, topics, config.batch(), sticky, LONGEST_PAUSE, watched);
  }

  /** Keeps what one reader reads, and says how far behind it is. */
  private final class Watched implements GroupReader.Keeper {
    private final String name;

    Watched(String name) {
      this.name = name;
    }

    @Override
    public void keep(ConsumerRecords<String, byte[]> records) {
      keeper.keep(records);
    }

    @Override
    public void polled(Consumer<String, byte[]> consumer) {
      long lag = 0;
      for (var partition : consumer.assignment()) {
        lag += consumer.currentLag(partition).orElse(0);
      }
      metrics.lag(name, lag);
    }
  }

  @Override
  public void stop() {
    readers.forEach(GroupReader::stop);
    for (int i = 1; i <= readers.size(); i++) {
      metrics.gone(GROUP + "-" + i);
    }
    readers = List.of();
  }

  @Override
  public Condition condition() {
    var all = readers;
    if (all.isEmpty()) {
      return Condition.ill("not started");
    }
    return Condition.of(all.stream().map(GroupReader::condition).toList());
  }
}
