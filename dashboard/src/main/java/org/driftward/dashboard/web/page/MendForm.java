package org.driftward.dashboard.web.page;

import java.util.Optional;
import org.driftward.dashboard.screen.BytesView;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.IntakeDesk.Refusal;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** A refused input as somebody mended it. */
public class MendForm {

  /** {@code original}, {@code text} or {@code digits}. */
  @RestForm public @Nullable String how;

  @RestForm public @Nullable String text;

  /** Hexadecimal. */
  @RestForm public @Nullable String digits;

  boolean original() {
    return how == null || how.equals("original");
  }

  /**
   * @return empty if the form holds no bytes
   */
  Optional<Bytes> mended(Refusal refusal) {
    if ("text".equals(how) && text != null) {
      return Optional.of(
          Bytes.of(BytesView.mended(text, refusal.bytes(), refusal.line().contentType())));
    }
    return digits == null ? Optional.empty() : BytesView.fromDigits(digits).map(Bytes::of);
  }
}
