package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.shift.Roster;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pictures, people, clock jumps, crashes and repetitions at random, for 50,000 steps a seed,
 * against a small reference. A failing seed is named by the parameter.
 */
class RandomWalkTest {

  private static final String WARD = Place.UNASSIGNED.ward();
  private static final int STEPS = 50_000;
  private static final List<Action> ACTIONS = List.of(Action.values());
  private static final List<Actor> STAFF = List.of(People.BEDSIDE, People.CHARGE, People.RESPONSE);

  @ParameterizedTest
  @ValueSource(longs = {1, 4, 5})
  void shouldNeverLoseAnEpisodeOrADeadline(long seed) {
    var walk = new Walk(new Random(seed));
    for (int step = 0; step < STEPS; step++) {
      walk.step();
    }
    assertThat(walk.kinds)
        .as("the walk has been everywhere")
        .contains(
            "opened",
            "raised",
            "lowered",
            "reasons-changed",
            "acknowledged",
            "attended",
            "handed-over",
            "held",
            "hold-ended",
            "passed-on",
            "owner-left",
            "escalated",
            "reopened",
            "reassessed",
            "closed");
    assertThat(walk.telling.seen)
        .as("every fate of a delivery")
        .containsExactlyInAnyOrder(State.values());
  }

  private static final class Walk {
    private final Random random;
    private final ReferenceScore reference = new ReferenceScore();
    private final List<Snapshot> sent = new ArrayList<>();
    private final Set<String> firedDeadlines = new HashSet<>();
    private final Map<String, Long> versions = new HashMap<>();
    final Set<String> kinds = new HashSet<>();
    final Telling telling;
    private Course course = Course.begin("V-1");
    private Instant now = Bedside.START;
    private Instant newestSet = Bedside.START.minusSeconds(1);
    private long sequence;
    private final List<Shift> shifts = new ArrayList<>();
    private int shiftsSoFar;

    Walk(Random random) {
      this.random = random;
      this.telling = new Telling(random);
    }

    void step() {
      int choice = random.nextInt(100);
      if (choice < 35) {
        jump();
      } else if (choice < 55) {
        picture();
      } else if (choice < 60) {
        correction();
      } else if (choice < 65) {
        lateOrRepeated();
      } else if (choice < 80) {
        act();
      } else if (choice < 81) {
        duty();
      } else if (choice < 82) {
        take(Bedside.ESCALATION.worry(course, "", People.BEDSIDE, now));
      } else if (choice < 90) {
        tell();
      } else {
        lookAtClocks();
      }
      staffed();
      holds();
    }

    /** Somebody comes on or goes off duty, and sometimes takes over from somebody else. */
    private void duty() {
      var actor = STAFF.get(random.nextInt(STAFF.size()));
      var account = random.nextInt(6) == 0 ? "b.five" : actor.account();
      var next = random.nextInt(3) == 0 ? STAFF.get(random.nextInt(STAFF.size())) : null;
      var successor = next == null ? null : begin(next.account(), Duty.CHARGE);
      shifts.replaceAll(
          shift ->
              shift.running() && shift.account().equals(account) && !shift.id().equals(successor)
                  ? shift.endedAt(now, successor)
                  : shift);
      if (random.nextBoolean()) {
        begin(actor.account(), random.nextBoolean() ? Duty.BEDSIDE : Duty.CHARGE);
      }
    }

    private String begin(String account, Duty duty) {
      var id = "S-" + ++shiftsSoFar;
      var beds = duty == Duty.BEDSIDE ? Set.of("1") : Set.<String>of();
      var end = now.plusSeconds(60);
      shifts.removeIf(old -> !old.running() && old.account().equals(account));
      shifts.add(new Shift(id, WARD, duty, account, account, beds, now, end, null, null));
      return id;
    }

    /** As the store does at the end of every transaction. */
    private void staffed() {
      var roster = Roster.of(shifts);
      take(Bedside.ESCALATION.staffed(course, roster, now));
      assertThat(Bedside.ESCALATION.staffed(course, roster, now).happenings()).isEmpty();
    }

    /** Mostly small steps, sometimes an outage, sometimes a clock put back. */
    private void jump() {
      int choice = random.nextInt(20);
      var step =
          choice == 0
              ? Duration.ofMinutes(random.nextInt(600))
              : choice == 1
                  ? Duration.ofSeconds(-random.nextInt(900))
                  : Duration.ofMillis(random.nextInt(600_000));
      now = now.plus(step);
    }

    private void picture() {
      var set = now.isAfter(newestSet) ? now : newestSet.plusMillis(1);
      newest(set, Pictures.of("V-1", set).score(total()));
    }

    /** The newest set was wrong: corrected in place, or retracted so that an earlier one counts. */
    private void correction() {
      if (!sent.isEmpty()) {
        var other = sent.get(sent.size() - 1 - random.nextInt(Math.min(2, sent.size())));
        newest(other.asOf(), Pictures.of("V-1", other.asOf()).score(total()));
      }
    }

    private void newest(Instant set, Pictures picture) {
      var snapshot = picture.sequence(++sequence).interval(Duration.ofHours(4)).build();
      boolean running = course.episode() != null;
      reference.picture(set, snapshot.leading().low().intValue(), running, now);
      newestSet = set;
      sent.removeIf(earlier -> !earlier.asOf().isBefore(set));
      sent.add(snapshot);
      take(Bedside.ESCALATION.picture(course, snapshot, now));
    }

    private void lateOrRepeated() {
      var before = course;
      if (!sent.isEmpty() && random.nextBoolean()) {
        var repeated = sent.get(random.nextInt(sent.size()));
        var decision = Bedside.ESCALATION.picture(course, repeated, now);
        assertThat(decision).isEqualTo(Decision.silent(before));
      } else {
        var late = Pictures.of("V-1", now.minusSeconds(7200)).sequence(++sequence).score(20).late();
        take(Bedside.ESCALATION.picture(course, late.build(), now));
        assertThat(course.episode()).isEqualTo(before.episode());
      }
    }

    private void act() {
      var running = course.episode();
      if (running == null) {
        return;
      }
      var action = ACTIONS.get(random.nextInt(ACTIONS.size()));
      var actor = STAFF.get(random.nextInt(STAFF.size()));
      var until = now.plusSeconds(1 + random.nextInt(7200));
      var request = new Request(running.id(), action, null, null, "because", "b.five", until);
      var verdict = Bedside.ESCALATION.act(course, request, actor, now);
      if (!(verdict instanceof Verdict.Done done)) {
        return;
      }
      if (action == Action.ATTEND) {
        reference.attended();
      }
      take(done.decision());
      if (action == Action.CLOSE) {
        var quiet = Bedside.POLICY.ladder().of(running.level()).quiet();
        reference.over(true, now.plus(quiet));
      }
    }

    /** Several instances look; each clock that has run out takes effect for exactly one of them. */
    private void lookAtClocks() {
      for (var kind : DeadlineKind.values()) {
        var due = course.deadlines(Bedside.POLICY).get(kind);
        var id = course.episode() == null ? "-" : course.episode().id();
        var version = course.episode() == null ? 0 : course.episode().version();
        var decision = Bedside.ESCALATION.ranOut(course, kind, now);
        boolean ranOut = due != null && !due.isAfter(now);
        assertThat(decision.happenings()).hasSize(ranOut ? 1 : 0);
        if (!ranOut) {
          continue;
        }
        if (random.nextInt(10) == 0) {
          // The process died before it committed: nothing has happened, and another looks again.
          assertThat(Bedside.ESCALATION.ranOut(course, kind, now)).isEqualTo(decision);
        }
        var once = kind + " " + id + " " + version + " " + due + " " + sequence;
        assertThat(firedDeadlines.add(once)).as(once).isTrue();
        take(decision);
        if (kind == DeadlineKind.EPISODE) {
          assertThat(Bedside.ESCALATION.ranOut(course, kind, now).happenings()).isEmpty();
        }
      }
    }

    /** Alarms go out; one that reaches nobody of an audience climbs once, and only while open. */
    private void tell() {
      telling.send(course, now);
      telling
          .unreached()
          .ifPresent(
              episode -> {
                var running = course.episode();
                boolean climbs =
                    running != null
                        && running.id().equals(episode)
                        && running.state() == EpisodeState.OPEN
                        && running.standing().rung() < rungs(running) - 1;
                var decision = Bedside.ESCALATION.unreached(course, episode, "untold", now);
                assertThat(decision.happenings()).hasSize(climbs ? 1 : 0);
                take(decision);
              });
    }

    private static int rungs(Case running) {
      return Bedside.POLICY.ladder().of(running.level()).rungs().size();
    }

    private void take(Decision decision) {
      for (var happening : decision.happenings()) {
        if (happening instanceof EpisodeChanged changed) {
          follow(changed);
        }
      }
      course = decision.course();
    }

    private void follow(EpisodeChanged changed) {
      kinds.add(changed.kind());
      telling.take(changed, now);
      var episode = changed.episode();
      long before = versions.getOrDefault(episode.id(), 0L);
      assertThat(episode.version()).isEqualTo(before + 1);
      versions.put(episode.id(), episode.version());
      if (changed.kind().equals("opened")) {
        assertThat(course.episode()).as("one card per patient").isNull();
        reference.opened();
      }
      if (episode.isOver() && changed.by().equals(Happening.SERVICE)) {
        reference.over(false, now);
      }
    }

    private void holds() {
      var running = course.episode();
      if (running == null) {
        assertThat(course.deadlines(Bedside.POLICY)).doesNotContainKey(DeadlineKind.EPISODE);
        return;
      }
      var standing = running.standing();
      assertThat(standing.due()).as("a running clock").isNotNull();
      assertThat(standing.owner() != null || standing.state() == EpisodeState.OPEN)
          .as("an owner, or a ladder that climbs")
          .isTrue();
      var owner = standing.owner();
      boolean present =
          owner == null
              || shifts.stream().noneMatch(shift -> shift.account().equals(owner.account()))
              || shifts.stream().anyMatch(s -> s.running() && s.account().equals(owner.account()));
      assertThat(present).as("an owner who has not gone off duty").isTrue();
      assertThat(running.concerns()).as("a reason").isNotEmpty();
      assertThat(running.level()).isEqualTo(Concerns.level(running.concerns()).orElseThrow());
      var score =
          running.concerns().stream().filter(c -> c.rule().equals("score-news2")).findFirst();
      assertThat(score.map(Concern::level).orElse(null)).isEqualTo(reference.level());
    }

    /** Long calm and long bad stretches, so that everything has time to happen. */
    private int total() {
      int mood = (int) (now.getEpochSecond() / 14_400 % 4);
      return switch (mood) {
        case 0 -> random.nextInt(4);
        case 1 -> 4 + random.nextInt(3);
        case 2 -> random.nextInt(9);
        default -> 5 + random.nextInt(6);
      };
    }
  }
}
