package org.driftward.dashboard.stream;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/** Reads the topics into the read model. All processes of the cluster share the work. */
@ApplicationScoped
public class ReadModelPart implements RolePart {

  private static final Logger LOG = Logger.getLogger(ReadModelPart.class);
  private static final Duration GRACE = Duration.ofSeconds(10);

  private final KafkaAccess access;
  private final DashboardConfig config;
  private final BatchKeeper keeper;
  private final BoardMetrics metrics;
  private volatile List<TopicReader> readers = List.of();
  private final List<Thread> threads = new ArrayList<>();

  public ReadModelPart(
      KafkaAccess access, ReadModel model, DashboardConfig config, BoardMetrics metrics) {
    this.access = access;
    this.config = config;
    this.keeper = new BatchKeeper(model, metrics);
    this.metrics = metrics;
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }

  @Override
  public String name() {
    return "read-model";
  }

  @Override
  public void start() {
    var started = new ArrayList<TopicReader>();
    for (int i = 1; i <= config.readers(); i++) {
      var name = TopicReader.GROUP + "-" + i;
      var reader = new TopicReader(name, access, config.batch(), keeper, metrics);
      var thread = new Thread(reader, name);
      thread.setDaemon(true);
      started.add(reader);
      threads.add(thread);
      thread.start();
    }
    readers = List.copyOf(started);
  }

  @Override
  public void stop() {
    readers.forEach(TopicReader::stop);
    for (Thread thread : threads) {
      try {
        thread.join(GRACE.toMillis());
        if (thread.isAlive()) {
          LOG.warnf("Reader %s did not stop in time", thread.getName());
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    threads.clear();
  }

  @Override
  public Condition condition() {
    var all = readers;
    if (all.isEmpty()) {
      return Condition.ill("not started");
    }
    return all.stream()
        .map(TopicReader::condition)
        .filter(condition -> !condition.well())
        .findFirst()
        .orElseGet(Condition::ok);
  }
}
