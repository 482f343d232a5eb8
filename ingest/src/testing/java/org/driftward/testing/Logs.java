package org.driftward.testing;

import java.util.logging.Level;
import org.jboss.logmanager.Logger;

/**
 * Log levels of a virtual machine in which Quarkus does not start. Until it starts, its log manager
 * lets everything through, and Kafka's clients and broker write a trace line for every record.
 */
public final class Logs {

  private Logs() {}

  /** From now on as much as a running application writes. */
  public static void quiet() {
    Logger.getLogger("").setLevel(Level.INFO);
  }
}
