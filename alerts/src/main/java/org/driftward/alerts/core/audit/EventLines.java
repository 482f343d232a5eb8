package org.driftward.alerts.core.audit;

import java.util.HashMap;
import java.util.Map;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.core.journal.CanonicalJson;
import org.driftward.alerts.core.journal.Line;

/** What an entered event, and its withdrawal, is written as. */
public final class EventLines {

  public static final String RECORDED = "recorded";
  public static final String WITHDRAWN = "withdrawn";

  private EventLines() {}

  public static String subject(String event) {
    return "audit-event/" + event;
  }

  public static Line recorded(AuditEvent event, String by) {
    var fields = new HashMap<String, Object>();
    fields.put("id", event.id());
    fields.put("kind", event.kind());
    fields.put("at", event.at());
    fields.put("ward", event.ward());
    fields.put("encounter", event.encounter());
    fields.put("place", event.place());
    fields.put("limitation", event.limitation());
    fields.put("expected", event.expected());
    fields.put("value", event.value());
    fields.put("answered", event.answered());
    fields.put("asked", event.asked());
    fields.put("note", event.note());
    return new Line(subject(event.id()), RECORDED, by, CanonicalJson.write(fields));
  }

  public static Line withdrawn(String event, String reason, String by) {
    return new Line(
        subject(event), WITHDRAWN, by, CanonicalJson.write(Map.of("id", event, "reason", reason)));
  }
}
