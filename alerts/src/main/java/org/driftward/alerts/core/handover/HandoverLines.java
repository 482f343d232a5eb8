package org.driftward.alerts.core.handover;

import java.util.HashMap;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.WardHandover;
import org.driftward.alerts.core.episode.Happening.Recorded;

/** What the journal keeps of hand-overs. */
public final class HandoverLines {

  private HandoverLines() {}

  public static Recorded of(Handover handover) {
    var body = new HashMap<String, Object>();
    body.put("encounter", handover.encounter());
    body.put("episode", handover.episode());
    body.put("receiver", handover.receiver());
    body.put("receiverAccount", handover.receiverAccount());
    body.put("identify", handover.text().identify());
    body.put("situation", handover.text().situation());
    body.put("background", handover.text().background());
    body.put("assessment", handover.text().assessment());
    body.put("recommendation", handover.text().recommendation());
    body.put("readBack", handover.readBack());
    return new Recorded("handover/" + handover.id(), "given", handover.giver(), body);
  }

  public static Recorded given(WardHandover handover) {
    var body = new HashMap<String, Object>();
    body.put("ward", handover.ward());
    body.put("sheet", handover.sheet());
    body.put("note", handover.note());
    return new Recorded("ward-handover/" + handover.id(), "given", handover.giver(), body);
  }

  public static Recorded received(WardHandover handover) {
    var body = new HashMap<String, Object>();
    body.put("ward", handover.ward());
    var by = String.valueOf(handover.receiver());
    return new Recorded("ward-handover/" + handover.id(), "received", by, body);
  }
}
