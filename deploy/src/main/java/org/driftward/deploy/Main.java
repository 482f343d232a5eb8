package org.driftward.deploy;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.driftward.deploy.command.Commands;
import org.driftward.deploy.embedded.StartException;
import org.jspecify.annotations.Nullable;

/**
 * Starts the ground, then Quarkus, and stops them the other way round; with arguments, runs one
 * command instead.
 *
 * <p>A signal makes the virtual machine run its shutdown hooks all at once: the one of Quarkus
 * stops the application, ours waits for that and then takes away the ground.
 */
@QuarkusMain
public final class Main {

  /**
   * Chatty before Quarkus configures the log. Held, because the log forgets loggers nobody holds.
   */
  private static final List<Logger> CHATTY =
      Stream.of("kafka", "org.apache.kafka", "io.zonky").map(Logger::getLogger).toList();

  private final CountDownLatch applicationOver = new CountDownLatch(1);
  private final Ground ground = new Ground();
  private volatile boolean stopping;

  private Main() {}

  public static void main(String... args) {
    if (args.length > 0) {
      System.exit(Commands.run(args));
    }
    new Main().run();
  }

  private void run() {
    CHATTY.forEach(logger -> logger.setLevel(Level.WARNING));
    Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "ground-stop"));
    try {
      ground.prepare();
    } catch (StartException e) {
      System.err.println(e.getMessage());
      exit(1);
    }
    if (stopping) {
      applicationOver.countDown();
      return;
    }
    Quarkus.run(null, this::applicationEnds);
  }

  private void applicationEnds(int code, @Nullable Throwable failure) {
    if (failure != null) {
      failure.printStackTrace();
    }
    exit(code);
  }

  private void exit(int code) {
    applicationOver.countDown();
    System.exit(code);
  }

  private void stop() {
    stopping = true;
    try {
      applicationOver.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    ground.close();
  }
}
