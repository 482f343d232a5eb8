package org.driftward.ground.part;

import org.driftward.ground.failure.Failures;
import org.jboss.logging.Logger;

/**
 * Sees every failure of every worker. Most mend themselves, or are mended by whoever starts what is
 * away, so the worker tries again. Where the virtual machine itself is at its end nothing in it can
 * be trusted, least of all a check that says it is well: the process ends at once, and whatever
 * started it starts it again.
 */
public final class Supervisor {

  /** The status with which such a process ends: {@code EX_SOFTWARE} of {@code sysexits.h}. */
  public static final int ENDED = 70;

  /** Hooks are not run: they need the memory that is not there. */
  public static final Supervisor OF_THE_PROCESS =
      new Supervisor(() -> Runtime.getRuntime().halt(ENDED));

  private static final Logger LOG = Logger.getLogger(Supervisor.class);

  private final Runnable end;

  /**
   * @param end of the process
   */
  public Supervisor(Runnable end) {
    this.end = end;
  }

  /**
   * Returns if there is sense in trying again.
   *
   * @param part that failed; its words go into the log, those of the failure do not
   */
  public void failed(String part, Throwable failure) {
    if (Failures.isOfTheMachine(failure)) {
      try {
        LOG.fatalf("The process ends: %s in %s", Failures.kind(failure), part);
      } finally {
        end.run();
      }
      return;
    }
    LOG.warnf("A part failed and tries again: %s, %s", part, Failures.kind(failure));
    LOG.debug("The failure", failure);
  }
}
