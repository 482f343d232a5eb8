package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import org.driftward.ingest.store.ImportQueue;
import org.driftward.ingest.work.RepeatingPart;

/** Works off uploaded files, batch by batch, beside any number of other processes that do. */
@Singleton
public class ImportPart extends RepeatingPart {

  private final ImportQueue queue;
  private final ImportStep step;

  ImportPart(ImportQueue queue, ImportStep step) {
    super("imports");
    this.queue = queue;
    this.step = step;
  }

  @Override
  protected boolean round() {
    return queue.work(step);
  }
}
