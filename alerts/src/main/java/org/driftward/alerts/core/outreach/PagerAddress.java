package org.driftward.alerts.core.outreach;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Where a call goes: a webhook by its name, and what it is to page. As text the name, and behind a
 * space the number.
 *
 * @param number or null where the webhook pages one thing only
 */
public record PagerAddress(String webhook, @Nullable String number) {

  public PagerAddress {
    Objects.requireNonNull(webhook, "webhook");
  }

  public static PagerAddress of(String text) {
    int space = text.indexOf(' ');
    return space < 0
        ? new PagerAddress(text, null)
        : new PagerAddress(text.substring(0, space), text.substring(space + 1).strip());
  }

  public String text() {
    return number == null ? webhook : webhook + " " + number;
  }
}
