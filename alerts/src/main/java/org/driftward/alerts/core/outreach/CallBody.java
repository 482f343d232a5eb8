package org.driftward.alerts.core.outreach;

import java.util.HashMap;
import java.util.Map;
import org.driftward.alerts.core.journal.CanonicalJson;
import org.driftward.alerts.core.policy.Detail;
import org.jspecify.annotations.Nullable;

/**
 * An alarm as the JSON body of a webhook. The same alarm always has the same body, so it says whom
 * it calls and not whom anything has reached.
 */
public final class CallBody {

  private CallBody() {}

  /**
   * @param address of the pages, or null if messages carry no link
   */
  public static String of(Parcel parcel, Detail detail, @Nullable String address) {
    var alarm = parcel.alarm();
    var episode = alarm.episode();
    var body = new HashMap<String, Object>();
    body.put("key", parcel.key());
    body.put("sequence", alarm.sequence());
    body.put("at", alarm.at());
    body.put("kind", alarm.kind());
    body.put("recipient", parcel.recipient());
    var number = PagerAddress.of(parcel.address()).number();
    if (number != null) {
      body.put("number", number);
    }
    body.put("audience", episode.audience());
    body.put("priority", episode.level());
    body.put("ward", episode.ward());
    body.put("bed", episode.bed());
    body.put("rung", episode.rung());
    body.put("since", episode.openedAt());
    body.put("answerBy", episode.due());
    body.put(
        "caution",
        "Decision support, not a certified medical device; local policy comes first. Delivery is"
            + " not an answer.");
    if (detail == Detail.FULL) {
      body.put("encounter", episode.encounter());
      body.put("episode", episode.id());
      body.put(
          "reasons",
          episode.reasons().stream()
              .map(
                  one ->
                      Map.of("words", one.words(), "priority", one.level(), "since", one.since()))
              .toList());
    }
    if (address != null) {
      boolean full = detail == Detail.FULL;
      body.put("link", address + (full ? "/encounters/" + episode.encounter() : "/response"));
    }
    return CanonicalJson.write(body);
  }
}
