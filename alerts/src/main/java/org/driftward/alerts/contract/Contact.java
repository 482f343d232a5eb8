package org.driftward.alerts.contract;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * How somebody on duty is told of alarms beyond the board. At least one way.
 *
 * @param mail address, or null
 * @param webhook name of a configured webhook that pages them, or null
 * @param number what that webhook is to page, such as an extension, handed on as it is; or null
 */
public record Contact(@Nullable String mail, @Nullable String webhook, @Nullable String number) {

  private static final Pattern MAIL = Pattern.compile("[^\\s@<>,;]+@[^\\s@<>,;]+");
  private static final Pattern WORD = Pattern.compile("\\S{1,64}");

  public Contact {
    if (mail == null && webhook == null) {
      throw new IllegalArgumentException("a contact without mail and without webhook");
    }
    if (mail != null && !isMail(mail)) {
      throw new IllegalArgumentException("no mail address");
    }
    if (webhook != null && !WORD.matcher(webhook).matches()) {
      throw new IllegalArgumentException("no name of a webhook");
    }
    if (number != null && (webhook == null || !WORD.matcher(number).matches())) {
      throw new IllegalArgumentException("a number is one word, for a webhook");
    }
  }

  public static boolean isMail(String text) {
    return MAIL.matcher(text).matches();
  }

  /** Neither an address nor a number. */
  @Override
  public String toString() {
    return "Contact";
  }
}
