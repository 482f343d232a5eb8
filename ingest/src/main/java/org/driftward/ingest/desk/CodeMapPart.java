package org.driftward.ingest.desk;

import jakarta.inject.Singleton;
import java.time.Duration;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.store.StoredCodes;

/** Takes up what people decide about codes, in every process that reads messages. */
@Singleton
public class CodeMapPart extends RepeatingPart implements RolePart {

  private final StoredCodes codes;

  public CodeMapPart(StoredCodes codes) {
    super("code-map");
    this.codes = codes;
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public Duration run() {
    codes.refresh();
    return A_MOMENT;
  }
}
