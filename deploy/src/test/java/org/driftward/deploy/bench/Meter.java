package org.driftward.deploy.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.function.DoubleSupplier;

/** Wall clock and CPU since it was made. */
final class Meter {

  private static final OperatingSystemMXBean SYSTEM =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private final DoubleSupplier server;
  private final long began = System.nanoTime();
  private final long client = SYSTEM.getProcessCpuTime();
  private final double serverBegan;

  /**
   * @param server CPU seconds of the broker or the database so far
   */
  Meter(DoubleSupplier server) {
    this.server = server;
    this.serverBegan = server.getAsDouble();
  }

  Measured read(String way, int encounters, long assessments, long bytes) {
    return new Measured(
        way,
        encounters,
        assessments,
        (System.nanoTime() - began) / 1e9,
        (SYSTEM.getProcessCpuTime() - client) / 1e9,
        server.getAsDouble() - serverBegan,
        bytes);
  }
}
