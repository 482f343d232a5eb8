package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.outreach.Dispatch;
import org.driftward.alerts.core.outreach.Dispatches;
import org.driftward.alerts.core.outreach.Notice;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.outreach.Rostered;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.policy.Ladder;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.alerts.core.shift.Roster;
import org.jdbi.v3.core.Handle;

/**
 * Writes down who is to be told, in the transaction of the alarm's journal entry: what is in the
 * journal will be sent, and nothing else is.
 */
@Singleton
public class DeliveryPlan {

  private final Ladder ladder;
  private final Outreach policy;
  private final Reach reach;
  private final JournalTable journal;

  public DeliveryPlan(Escalation escalation, Reach reach, JournalTable journal) {
    this.ladder = escalation.policy().ladder();
    this.policy = escalation.policy().outreach();
    this.reach = reach;
    this.journal = journal;
  }

  /**
   * @param sequences of the journal entries of the happenings, in the same order
   */
  void keep(Handle handle, List<Happening> happenings, List<Long> sequences, Instant now) {
    for (int i = 0; i < happenings.size(); i++) {
      if (happenings.get(i) instanceof EpisodeChanged changed) {
        var notice = Notice.of(sequences.get(i), changed, ladder, now);
        notice.ifPresent(alarm -> keep(handle, alarm));
      }
    }
  }

  private void keep(Handle handle, Notice notice) {
    var episode = notice.episode();
    handle
        .createUpdate(
            "INSERT INTO alerts.notice"
                + " (sequence, episode, encounter, ward, level, rung, tone, at, due) VALUES"
                + " (:sequence, :episode, :encounter, :ward, :level, :rung, :tone, :at, :due)")
        .bind("sequence", notice.sequence())
        .bind("episode", episode.id())
        .bind("encounter", episode.encounter())
        .bind("ward", episode.ward())
        .bind("level", episode.level().word())
        .bind("rung", episode.rung())
        .bind("tone", notice.rung().channels().contains(Channel.TONE))
        .bind("at", notice.at())
        .bind("due", notice.due())
        .execute();
    for (var dispatch : dispatches(handle, notice)) {
      keep(handle, notice, dispatch);
    }
  }

  /** To whoever is on duty in this very transaction. */
  private List<Dispatch> dispatches(Handle handle, Notice notice) {
    if (notice.rung().channels().stream().noneMatch(Channel::leaves)) {
      return List.of();
    }
    var ward = notice.episode().ward();
    var roster = Roster.of(ShiftTable.running(handle, Set.of(), Set.of(ward), ""));
    return new Dispatches(new Rostered(roster, policy, reach), reach).of(notice);
  }

  private void keep(Handle handle, Notice notice, Dispatch dispatch) {
    boolean hopeless = dispatch.whyNot() != null;
    var row =
        new DeliveryRow(
            dispatch.key(notice.sequence()),
            notice.sequence(),
            dispatch.channel(),
            dispatch.recipient(),
            dispatch.address(),
            hopeless ? State.NOT_SENT : State.WAITING,
            0,
            dispatch.whyNot());
    var audiences = new ArrayList<String>();
    dispatch.audiences().stream().map(Audience::word).sorted().forEach(audiences::add);
    DeliveryRow.insert(handle, row, audiences, hopeless ? null : notice.at(), notice.at());
    if (hopeless) {
      journal.append(handle, row.line(), notice.at());
    }
  }
}
