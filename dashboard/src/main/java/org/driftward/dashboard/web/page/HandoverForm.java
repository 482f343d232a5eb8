package org.driftward.dashboard.web.page;

import java.util.Objects;
import org.driftward.alerts.contract.HandoverText;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** The fields of a hand-over's form. */
public class HandoverForm {

  static final HandoverForm EMPTY = new HandoverForm();

  @RestForm public @Nullable String identify;
  @RestForm public @Nullable String situation;
  @RestForm public @Nullable String background;
  @RestForm public @Nullable String assessment;
  @RestForm public @Nullable String recommendation;

  /** Whether the person stands by the recommendation; any value at all. */
  @RestForm public @Nullable String confirm;

  @RestForm public @Nullable String receiver;

  /** Sign-in name of whoever takes the episode over; empty of somebody without an account. */
  @RestForm("account")
  public @Nullable String receiverAccount;

  @RestForm public @Nullable String readBack;

  boolean isEmpty() {
    return identify == null && situation == null && recommendation == null;
  }

  boolean confirmed() {
    return confirm != null;
  }

  boolean isReadBack() {
    return readBack != null;
  }

  String receiver() {
    return or(receiver).isBlank() ? or(receiverAccount).strip() : or(receiver).strip();
  }

  @Nullable String account() {
    return or(receiverAccount).isBlank() ? null : or(receiverAccount).strip();
  }

  /** A draft that a person has confirmed is theirs, and no longer says that it is a draft. */
  HandoverText text() {
    var said = or(recommendation);
    return new HandoverText(
        or(identify),
        or(situation),
        or(background),
        or(assessment),
        confirmed() ? said.replace(HandoverText.DRAFT, "") : said);
  }

  private static String or(@Nullable String text) {
    return Objects.requireNonNullElse(text, "").replace("\r\n", "\n");
  }
}
