package org.driftward.alerts.core.call;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeSet;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.CallDesk.Entry;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.core.episode.Happening.Recorded;

/** What the journal keeps of calls and clinical events. */
public final class CallLines {

  private CallLines() {}

  /**
   * @param call as it is after the entry
   * @param now stands for a time that was left out
   */
  public static Recorded of(Call call, Entry entry, String by, Instant now) {
    var body = new HashMap<String, Object>();
    body.put("encounter", call.encounter());
    body.put("ward", call.ward());
    body.put("version", call.version());
    return new Recorded("call/" + call.episode(), said(entry, body, now), by, body);
  }

  private static String said(Entry entry, Map<String, Object> body, Instant now) {
    if (entry instanceof Entry.Reached reached) {
      body.put("step", reached.step());
      body.put("at", reached.at() == null ? now : reached.at());
      return "reached";
    }
    if (entry instanceof Entry.CalledBy calledBy) {
      body.put("caller", calledBy.caller().role());
      body.put("name", calledBy.caller().name());
      return "called-by";
    }
    if (entry instanceof Entry.Present present) {
      body.put("present", new TreeSet<>(present.roles()));
      return "present";
    }
    if (entry instanceof Entry.Treated treated) {
      body.put("treatment", treated.kind());
      body.put("note", treated.note());
      body.put("at", treated.at() == null ? now : treated.at());
      return "treated";
    }
    if (entry instanceof Entry.HandedOver handed) {
      body.put("to", handed.to());
      body.put("note", handed.note());
      return "handed-over";
    }
    var finished = (Entry.Finished) entry;
    body.put("disposition", finished.ending().disposition());
    body.put("plan", finished.ending().plan());
    body.put("recipient", finished.ending().recipient());
    body.put("nextSet", finished.ending().nextSet());
    body.put("at", finished.at() == null ? now : finished.at());
    return "finished";
  }

  public static Recorded of(ClinicalEvent event) {
    var body = new HashMap<String, Object>();
    body.put("id", event.id());
    body.put("ward", event.ward());
    body.put("kind", event.kind());
    body.put("at", event.at());
    body.put("notForResuscitation", event.notForResuscitation());
    body.put("expected", event.expected());
    body.put("note", event.note());
    return new Recorded("encounter/" + event.encounter(), "event", event.by(), body);
  }
}
