package org.driftward.ingest.desk;

import jakarta.inject.Singleton;
import org.driftward.ingest.store.StoredCodes;
import org.driftward.ingest.work.RepeatingPart;

/** Takes up what people decide about codes, in every process that reads messages. */
@Singleton
public class CodeMapPart extends RepeatingPart {

  private final StoredCodes codes;

  public CodeMapPart(StoredCodes codes) {
    super("code-map");
    this.codes = codes;
  }

  @Override
  protected boolean round() {
    codes.refresh();
    return false;
  }
}
