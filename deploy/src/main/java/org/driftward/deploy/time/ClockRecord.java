package org.driftward.deploy.time;

import java.time.Instant;
import java.util.Optional;

/** One instant that outlives the process. */
public interface ClockRecord {

  Optional<Instant> read();

  void write(Instant instant);
}
