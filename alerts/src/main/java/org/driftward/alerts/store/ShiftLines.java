package org.driftward.alerts.store;

import java.util.HashMap;
import java.util.List;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.episode.Happening.Recorded;

/** What the journal keeps of a shift. */
final class ShiftLines {

  private ShiftLines() {}

  /**
   * @param kind {@code began}, {@code ended} or {@code stayed-on}
   */
  static Recorded of(String kind, String by, Shift shift) {
    var body = new HashMap<String, Object>();
    body.put("id", shift.id());
    body.put("ward", shift.ward());
    body.put("duty", shift.duty());
    body.put("account", shift.account());
    body.put("name", shift.name());
    body.put("beds", List.copyOf(shift.bedsInOrder()));
    body.put("from", shift.from());
    body.put("until", shift.until());
    body.put("ended", shift.ended());
    body.put("successor", shift.successor());
    var contact = shift.contact();
    if (contact != null) {
      // Alarms of this duty go there: the record has to say where.
      body.put("mail", contact.mail());
      body.put("webhook", contact.webhook());
      body.put("number", contact.number());
    }
    return new Recorded("shift/" + shift.id(), kind, by, body);
  }
}
