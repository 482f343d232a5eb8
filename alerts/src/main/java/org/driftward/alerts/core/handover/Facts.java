package org.driftward.alerts.core.handover;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.PatientRecord.Page;
import org.jspecify.annotations.Nullable;

/**
 * What the record says of a patient who is to be handed over.
 *
 * @param episode the running one, or null
 * @param story of that episode, oldest first
 * @param present deliveries of the present alarm of that episode
 * @param call of the response team for that episode, or null
 */
public record Facts(
    Page page,
    @Nullable Episode episode,
    List<EpisodeChange> story,
    List<Delivery> present,
    @Nullable Call call,
    Actor giver,
    Instant now) {
  public Facts {
    story = List.copyOf(story);
    present = List.copyOf(present);
  }
}
