package org.driftward.ingest.hl7.mllp;

import jakarta.inject.Singleton;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/**
 * Listens for senders of HL7 v2 and gives each a thread of its own, up to a bound. Where the port
 * is taken, it says so and goes on trying. Thread-safe once started.
 */
@Singleton
public final class MllpListener implements RolePart {

  private static final Logger LOG = Logger.getLogger(MllpListener.class);
  private static final Duration BETWEEN_CHECKS = Duration.ofMillis(200);
  private static final Duration BETWEEN_TRIES = Duration.ofSeconds(2);
  private static final Duration LAST_WORDS = Duration.ofSeconds(5);
  private static final int BACKLOG = 50;

  /** Bounds on one connection. */
  record Limits(int mostBytes, Duration idle, Duration patience) {}

  private final IngestConfig.Mllp config;
  private final Limits limits;
  private final MessageHandler handler;
  private final MllpMetrics metrics;
  private final Set<Connection> connections = ConcurrentHashMap.newKeySet();
  private volatile Optional<Run> run = Optional.empty();
  private static final Condition NOT_STARTED = Condition.ill("not started");

  public MllpListener(IngestConfig config, HandedIn handler, MllpMetrics metrics) {
    this.config = config.mllp();
    this.limits =
        new Limits(
            Math.toIntExact(this.config.maxMessage().asLongValue()),
            this.config.idle(),
            this.config.patience());
    this.handler = handler;
    this.metrics = metrics;
    metrics.count(connections);
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "mllp";
  }

  @Override
  public void start() {
    var started = new Run();
    run = Optional.of(started);
    started.start();
  }

  @Override
  public void stop() {
    run.ifPresent(Run::stop);
    run = Optional.empty();
  }

  @Override
  public Condition condition() {
    return run.map(Run::condition).orElse(NOT_STARTED);
  }

  /** The port it listens on now, if it does. */
  public Optional<Integer> port() {
    return run.flatMap(running -> Optional.ofNullable(running.server))
        .map(ServerSocket::getLocalPort);
  }

  /** From one start to the next stop. */
  private final class Run {

    private final ExecutorService senders =
        Executors.newCachedThreadPool(task -> thread(task, "driftward-mllp-sender"));
    private final Worker watch = new Worker("mllp-watch", this::closeLate);
    private final Worker listening = new Worker("mllp", this::listen);
    private volatile ServerSocket server;

    void start() {
      watch.start();
      listening.start();
    }

    private Duration closeLate() {
      connections.forEach(Connection::closeIfLate);
      return BETWEEN_CHECKS;
    }

    private Duration listen() {
      try (var open = new ServerSocket()) {
        open.setReuseAddress(true);
        open.bind(new InetSocketAddress(config.host(), config.port()), BACKLOG);
        server = open;
        listening.say(Condition.ok());
        accept(open);
      } catch (IOException e) {
        if (!listening.stopping()) {
          listening.say(Condition.ill("cannot listen on port " + config.port()));
          LOG.warnf("MLLP cannot listen, trying again: %s", e.getClass().getSimpleName());
        }
      }
      return BETWEEN_TRIES;
    }

    Condition condition() {
      return Condition.of(List.of(listening.condition(), watch.condition()));
    }

    private void accept(ServerSocket open) throws IOException {
      while (!listening.stopping()) {
        var socket = open.accept();
        if (connections.size() >= config.maxConnections()) {
          metrics.turnedAway();
          socket.close();
        } else {
          serve(socket);
        }
      }
    }

    private void serve(Socket socket) throws IOException {
      socket.setTcpNoDelay(true);
      socket.setKeepAlive(true);
      var connection = new Connection(socket, limits, handler);
      connections.add(connection);
      senders.execute(
          () -> {
            try {
              connection.run();
            } finally {
              connections.remove(connection);
            }
          });
    }

    void stop() {
      listening.stopSoon();
      try {
        var open = server;
        if (open != null) {
          open.close();
        }
        listening.stop();
        watch.stop();
        connections.forEach(Connection::close);
        senders.shutdown();
        if (!senders.awaitTermination(LAST_WORDS.toMillis(), TimeUnit.MILLISECONDS)) {
          LOG.warn("A message was still in hand when MLLP stopped");
        }
      } catch (IOException e) {
        LOG.warnf("MLLP does not close: %s", e.getClass().getSimpleName());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static Thread thread(Runnable task, String name) {
    var thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }
}
