package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.store.ImportQueue;
import org.driftward.ingest.work.Repeating;

/** Works off uploaded files, batch by batch, beside any number of other processes that do. */
@Singleton
public class ImportPart implements RolePart {

  private final Repeating work;

  ImportPart(ImportQueue queue, ImportStep step) {
    this.work = new Repeating("imports", () -> queue.work(step));
  }

  /** Something has arrived. */
  void ring() {
    work.ring();
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "imports";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
