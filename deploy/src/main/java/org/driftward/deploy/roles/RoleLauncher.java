package org.driftward.deploy.roles;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.driftward.deploy.kafka.TopicKeeper;
import org.driftward.ground.part.Part;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/**
 * Starts the parts of the played roles, in order, once their topics exist, and stops them in
 * reverse. All of it in one thread of its own: waiting for Kafka keeps nobody else waiting.
 */
@Singleton
public class RoleLauncher {

  private static final Logger LOG = Logger.getLogger(RoleLauncher.class);
  private static final long PAUSE_SECONDS = 2;
  private static final long STOP_SECONDS = 20;

  private final PlayedParts parts;
  private final TopicKeeper topics;
  private final Event<Launched> launched;
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(work -> new Thread(work, "role-launcher"));

  /** Newest first. Only the launcher's thread touches it. */
  private final Deque<RolePart> running = new ArrayDeque<>();

  private Future<?> launching = CompletableFuture.completedFuture(null);
  private volatile Part.Condition condition = Part.Condition.ill("not started");

  @Inject
  RoleLauncher(PlayedParts parts, TopicKeeper topics, Event<Launched> launched) {
    this.parts = parts;
    this.topics = topics;
    this.launched = launched;
  }

  /** Whether every part has been started; what becomes of each it says itself. */
  public Part.Condition condition() {
    return condition;
  }

  void launch(@Observes StartupEvent event) {
    launching = thread.submit(this::startAll);
  }

  void land(@Observes ShutdownEvent event) throws InterruptedException {
    launching.cancel(true);
    condition = Part.Condition.ill("stopping");
    thread.execute(this::stopAll);
    thread.shutdown();
    if (!thread.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
      LOG.error("A part does not stop; it is left to the end of the process");
    }
  }

  private void startAll() {
    try {
      awaitTopics();
      for (var part : parts.inOrder()) {
        running.push(part);
        part.start();
        LOG.infof("Part started: %s", part.name());
      }
      condition = Part.Condition.ok();
      launched.fire(new Launched());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error e) {
      condition = Part.Condition.ill("a part cannot start");
      LOG.error("A part cannot start; the process ends", e);
      Quarkus.asyncExit(1);
    }
  }

  private void awaitTopics() throws InterruptedException {
    while (true) {
      try {
        topics.prepare();
        return;
      } catch (ExecutionException e) {
        condition = Part.Condition.ill("waiting for Kafka");
        LOG.warnf("Kafka does not answer yet: %s", e.getCause().getClass().getSimpleName());
        TimeUnit.SECONDS.sleep(PAUSE_SECONDS);
      }
    }
  }

  private void stopAll() {
    while (!running.isEmpty()) {
      stop(running.pop());
    }
  }

  private static void stop(RolePart part) {
    try {
      part.stop();
      LOG.infof("Part stopped: %s", part.name());
    } catch (RuntimeException | Error e) {
      LOG.errorf(e, "Part did not stop cleanly: %s", part.name());
    }
  }
}
