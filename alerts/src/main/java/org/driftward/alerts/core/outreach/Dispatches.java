package org.driftward.alerts.core.outreach;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.core.policy.Audience;

/** Addresses an alarm: whoever stands in several audiences is told once. Pure. */
public record Dispatches(Recipients recipients, Reach reach) {

  /** One for each channel and address; also one for each audience that nobody answers for. */
  public List<Dispatch> of(Notice notice) {
    Map<String, Dispatch> byAddress = new LinkedHashMap<>();
    for (var channel : notice.rung().channels()) {
      if (channel.leaves()) {
        for (var audience : notice.rung().audience()) {
          for (var dispatch : of(notice, channel, audience)) {
            byAddress.merge(whom(dispatch), dispatch, Dispatch::alsoFor);
          }
        }
      }
    }
    return List.copyOf(byAddress.values());
  }

  private static String whom(Dispatch dispatch) {
    var address = dispatch.address().isEmpty() ? dispatch.recipient() : dispatch.address();
    return dispatch.channel().word() + " " + address;
  }

  private List<Dispatch> of(Notice notice, Channel channel, Audience audience) {
    var episode = notice.episode();
    var dispatches = new ArrayList<Dispatch>();
    for (var one : recipients.of(audience, channel, episode.ward(), episode.bed())) {
      var whyNot = reach.whyNot(channel, one.address());
      dispatches.add(new Dispatch(channel, one.name(), one.address(), Set.of(audience), whyNot));
    }
    if (dispatches.isEmpty()) {
      var nobody = "nobody has an address for " + channel.word();
      dispatches.add(new Dispatch(channel, audience.words(), "", Set.of(audience), nobody));
    }
    return dispatches;
  }
}
