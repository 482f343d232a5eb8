package org.driftward.deploy.embedded;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntFunction;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.Worker;
import org.jboss.logging.Logger;

/**
 * An embedded part that is started again, on the same port and with the same data, when it no
 * longer takes connections. The application stays up meanwhile and finds it again as it would find
 * a broker or a database of the hospital's.
 */
public final class Watched implements EmbeddedPart {

  private static final Logger LOG = Logger.getLogger(Watched.class);
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(1);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);
  private static final int PATIENCE_MILLIS = 2_000;

  /** One refused connection may be a moment's load; what is gone refuses the next one too. */
  private static final int LOOKS_TO_BELIEVE = 2;

  /** Of the process: they begin before the application is there to be asked, and outlive it. */
  private static final Map<String, Watched> ALL = new ConcurrentHashMap<>();

  private final String name;
  private final IntFunction<Listening> start;
  private final Worker watch;
  private volatile Listening part;
  private int refused;

  private Watched(String name, IntFunction<Listening> start, Listening part) {
    this.name = name;
    this.start = start;
    this.part = part;
    this.watch = new Worker("embedded-" + name, LONGEST_PAUSE, this::look);
  }

  /**
   * Returns once it runs.
   *
   * @param start takes a port, 0 for any free one
   * @throws StartException if it does not start the first time
   */
  public static Watched start(String name, IntFunction<Listening> start, int wantedPort) {
    var watched = new Watched(name, start, start.apply(wantedPort));
    ALL.put(name, watched);
    watched.watch.start();
    return watched;
  }

  /** Each embedded part of this process, by name. */
  public static Map<String, Condition> conditions() {
    var conditions = new TreeMap<String, Condition>();
    ALL.forEach((name, watched) -> conditions.put(name, watched.condition()));
    return conditions;
  }

  Condition condition() {
    return watch.condition();
  }

  private Duration look() {
    refused = takesConnections() ? 0 : refused + 1;
    if (refused >= LOOKS_TO_BELIEVE) {
      watch.say(Condition.ill("it has ended and is started again"));
      startAgain();
      refused = 0;
    }
    return BETWEEN_LOOKS;
  }

  private void startAgain() {
    LOG.errorf("An embedded part has ended and is started again: %s", name);
    int port = part.port();
    try {
      part.close();
    } catch (RuntimeException e) {
      // It is gone already; the next one clears up what it left.
      LOG.debug("What has ended does not close", e);
    }
    part = start.apply(port);
    LOG.infof("An embedded part runs again: %s", name);
  }

  private boolean takesConnections() {
    try (var socket = new Socket()) {
      var address = new InetSocketAddress(InetAddress.getLoopbackAddress(), part.port());
      socket.connect(address, PATIENCE_MILLIS);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public Map<String, String> properties() {
    return part.properties();
  }

  @Override
  public void close() {
    watch.stop();
    ALL.remove(name);
    part.close();
  }
}
