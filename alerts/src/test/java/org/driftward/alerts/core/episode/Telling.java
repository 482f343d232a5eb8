package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.driftward.alerts.Policies;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.outreach.Dispatch;
import org.driftward.alerts.core.outreach.Dispatches;
import org.driftward.alerts.core.outreach.Notice;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Progress;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.outreach.Rostered;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.shift.Roster;
import org.driftward.alerts.policy.PolicyFile;
import org.jspecify.annotations.Nullable;

/** The deliveries of a random walk, kept as the store keeps them but in memory. */
final class Telling {

  /** Every rung of high and medium tells from outside. */
  private static final PolicyFile POLICY =
      PolicyFile.parse(
          "walk", Policies.outreach().replace("[board, tone]", "[board, tone, mail, webhook]"));

  private static final Reach REACH = new Reach(true, Set.of("pagers"));
  private static final Dispatches DISPATCHES =
      new Dispatches(new Rostered(Roster.of(List.of()), POLICY.policy().outreach(), REACH), REACH);

  private final Random random;
  private final Map<String, Sent> deliveries = new LinkedHashMap<>();
  private final Set<String> receiver = new HashSet<>();
  final Set<State> seen = EnumSet.noneOf(State.class);
  private @Nullable Notice newest;
  private long sequence;
  private boolean unheard;

  Telling(Random random) {
    this.random = random;
  }

  private record Sent(Notice notice, Dispatch dispatch, State state, int made) {
    boolean settled() {
      return state != State.WAITING && state != State.FAILED;
    }
  }

  /** What the journal keeps is planned with it, once. */
  void take(EpisodeChanged changed, Instant now) {
    sequence++;
    var notice = Notice.of(sequence, changed, POLICY.policy().ladder(), now);
    notice.ifPresent(this::plan);
  }

  private void plan(Notice notice) {
    newest = notice;
    for (var dispatch : DISPATCHES.of(notice)) {
      var state = dispatch.whyNot() == null ? State.WAITING : State.NOT_SENT;
      var key = dispatch.key(notice.sequence());
      assertThat(deliveries.put(key, new Sent(notice, dispatch, state, 0))).isNull();
    }
  }

  /** Somebody sends whatever waits; some die between sending and keeping that they did. */
  void send(Course course, Instant now) {
    for (var key : List.copyOf(deliveries.keySet())) {
      var sent = deliveries.get(key);
      if (!sent.settled()) {
        send(key, sent, course, now);
      }
    }
    deliveries.values().forEach(sent -> seen.add(sent.state()));
    deliveries.values().removeIf(sent -> sent.settled() && !sent.notice().equals(newest));
  }

  private void send(String key, Sent sent, Course course, Instant now) {
    var running = course.episode();
    boolean open =
        running != null
            && running.id().equals(sent.notice().episode().id())
            && running.state() == EpisodeState.OPEN;
    if (!open) {
      keep(key, sent, new Progress(State.WITHDRAWN, null, null), sent.made());
      return;
    }
    var outcome = outcome();
    if (outcome instanceof Outcome.Taken) {
      receiver.add(key);
    }
    if (random.nextInt(10) > 0) {
      int made = sent.made() + 1;
      var policy = POLICY.policy().outreach();
      var due = sent.notice().due();
      keep(key, sent, Progress.after(outcome, made, due, now, policy, 0.5), made);
    }
  }

  private void keep(String key, Sent sent, Progress progress, int made) {
    deliveries.put(key, new Sent(sent.notice(), sent.dispatch(), progress.state(), made));
    unheard |= progress.state() == State.GIVEN_UP;
    if (progress.state() == State.DELIVERED) {
      assertThat(receiver).as("what counts as delivered was taken").contains(key);
    }
  }

  private Outcome outcome() {
    return switch (random.nextInt(4)) {
      case 0, 1 -> new Outcome.Taken();
      case 2 -> new Outcome.Failed("away", null);
      default -> new Outcome.Refused("no");
    };
  }

  /** The episode whose newest alarm leaves an audience untold, told once. */
  Optional<String> unreached() {
    var notice = newest;
    if (!unheard || notice == null) {
      return Optional.empty();
    }
    unheard = false;
    var own = new ArrayList<Sent>();
    deliveries.values().stream().filter(sent -> sent.notice().equals(notice)).forEach(own::add);
    return notice.rung().audience().stream().anyMatch(who -> untold(own, who))
        ? Optional.of(notice.episode().id())
        : Optional.empty();
  }

  private static boolean untold(List<Sent> own, Audience who) {
    var theirs = own.stream().filter(sent -> sent.dispatch().audiences().contains(who)).toList();
    return theirs.stream().anyMatch(sent -> sent.state() == State.GIVEN_UP)
        && theirs.stream()
            .allMatch(sent -> sent.state() == State.GIVEN_UP || sent.state() == State.NOT_SENT);
  }
}
