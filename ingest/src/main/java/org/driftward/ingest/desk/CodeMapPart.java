package org.driftward.ingest.desk;

import jakarta.inject.Singleton;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.store.StoredCodes;
import org.driftward.ingest.work.Repeating;

/** Takes up what people decide about codes, in every process that reads messages. */
@Singleton
public class CodeMapPart implements RolePart {

  private final Repeating work;

  public CodeMapPart(StoredCodes codes) {
    this.work =
        new Repeating(
            "code-map",
            () -> {
              codes.refresh();
              return false;
            });
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "code-map";
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
