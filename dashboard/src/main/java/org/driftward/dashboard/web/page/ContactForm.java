package org.driftward.dashboard.web.page;

import org.driftward.alerts.contract.Contact;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** How somebody who comes on duty is told of alarms beyond the board, as a form says it. */
public class ContactForm {

  @RestForm public @Nullable String mail;
  @RestForm public @Nullable String webhook;
  @RestForm public @Nullable String number;

  /** What is wrong with it in words, or null. */
  @Nullable String fault() {
    try {
      contact();
      return null;
    } catch (IllegalArgumentException e) {
      return "how to tell of alarms: " + e.getMessage();
    }
  }

  /**
   * @return null where nothing is filled in: the policy says how
   * @throws IllegalArgumentException if nobody could be told so
   */
  @Nullable Contact contact() {
    var address = FormField.words(mail);
    var pager = FormField.words(webhook);
    var which = FormField.words(number);
    return address == null && pager == null && which == null
        ? null
        : new Contact(address, pager, which);
  }
}
