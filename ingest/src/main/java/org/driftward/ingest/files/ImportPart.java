package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.time.Duration;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.store.ImportQueue;

/** Works off uploaded files, batch by batch, beside any number of other processes that do. */
@Singleton
public class ImportPart extends RepeatingPart implements RolePart {

  private final ImportQueue queue;
  private final ImportStep step;

  ImportPart(ImportQueue queue, ImportStep step) {
    super("imports");
    this.queue = queue;
    this.step = step;
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public Duration run() {
    return queue.work(step) ? Duration.ZERO : A_MOMENT;
  }
}
