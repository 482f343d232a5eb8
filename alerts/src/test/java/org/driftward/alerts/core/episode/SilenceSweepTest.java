package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.driftward.alerts.People;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Every patient, every finding, every step for the worse, in every state of an episode and under
 * every kind of care plan, by the real judge and the real machine: somebody is told at that set, or
 * the case is one of the few in {@code docs/silence.md}.
 */
class SilenceSweepTest {

  private static final Path LIST = Path.of("..", "docs", "silence.md");

  private static final Path REPORT = Path.of("target", "silence-sweep.txt");

  private int cases;
  private int told;
  private final Map<String, Integer> silent = new TreeMap<>();
  private final Set<String> unanswered = new TreeSet<>();
  private final List<String> unexplained = new ArrayList<>();

  /** What was done about the first of the two pictures. */
  private enum State {
    NONE,
    OPEN,
    ACKNOWLEDGED,
    ATTENDED,
    HELD,
    QUIET,
    HELD_BY_PLAN,
    LIMITED_BY_PLAN,
    MERGED,
    TAKEN_BACK,
    MOVED;

    /** Brings it about; false where the picture gave no episode to be in that state. */
    boolean reach(Bedside bed, Snapshot first) {
      if (this != NONE) {
        bed.moved(encounter(1, "LINDEN", null));
        bed.take(Bedside.ESCALATION.picture(bed.course, first, bed.now));
      }
      boolean needs = this != NONE && this != OPEN && this != MOVED && this != LIMITED_BY_PLAN;
      if (needs && bed.calm()) {
        return false;
      }
      switch (this) {
        case ACKNOWLEDGED -> bed.act(Action.ACKNOWLEDGE, People.CHARGE);
        case ATTENDED -> bed.act(Action.ATTEND, People.CHARGE);
        case HELD -> bed.act(Action.HOLD, People.CHARGE, "scan", bed.now.plusSeconds(7200));
        case QUIET -> close(bed);
        case HELD_BY_PLAN ->
            bed.signed(
                plan(bed.now, List.of(), new Hold("scan", bed.now.plusSeconds(7200))),
                People.CHARGE);
        case LIMITED_BY_PLAN -> {
          if (!bed.calm()) {
            close(bed);
          }
          bed.signed(plan(bed.now, LIMITS, null), People.CHARGE);
        }
        case MERGED -> merge(bed);
        case TAKEN_BACK ->
            bed.moved(encounter(2, "LINDEN", bed.now)).moved(encounter(3, "LINDEN", null));
        case MOVED -> bed.moved(encounter(2, "ASPEN", null));
        default -> {}
      }
      return true;
    }

    private static void close(Bedside bed) {
      bed.act(Action.ATTEND, People.CHARGE);
      bed.act(Action.CLOSE, People.CHARGE, "known", null);
    }
  }

  private static final List<Limit> LIMITS =
      List.of(
          new Limit("oxygen-saturation", new BigDecimal("80"), new BigDecimal("100")),
          new Limit("respiratory-rate", new BigDecimal("8"), new BigDecimal("35")),
          new Limit("systolic-pressure", new BigDecimal("80"), new BigDecimal("220")),
          new Limit("heart-rate", new BigDecimal("40"), new BigDecimal("140")));

  @Test
  void shouldTellSomebodyOfEveryStepForTheWorseOrSayWhyNot() throws IOException {
    for (var who : Sweep.Who.values()) {
      for (var ladder : Sweep.LADDERS) {
        for (int from = 0; from < ladder.values().size(); from++) {
          for (int to = from + 1; to < ladder.values().size(); to++) {
            step(who, ladder, from, to);
          }
        }
      }
    }

    var counts = "%d cases, %d told, silent %s".formatted(cases, told, silent);
    Files.writeString(REPORT, counts + "\n" + String.join("\n", unanswered) + "\n");
    assertThat(unexplained).as("neither told nor in the list").isEmpty();
    assertThat(listed("| why |")).as("the reasons of the list").containsAll(silent.keySet());
    assertThat(listed("| who and what |"))
        .as("the worst value of every ladder calls somebody, but for these")
        .containsAll(unanswered);
    assertThat(told).as(counts).isGreaterThan(cases / 2);
  }

  private void step(Sweep.Who who, Sweep.Ladder ladder, int from, int to) {
    var values = List.of(ladder.values().get(from), ladder.values().get(to));
    var pictures = who.pictures(ladder.code(), values);
    for (var state : State.values()) {
      var bed = new Bedside();
      if (state.reach(bed, pictures.get(0))) {
        var before = bed.course;
        bed.after(Sweep.BETWEEN);
        bed.take(Bedside.ESCALATION.picture(bed.course, pictures.get(1), bed.now));
        cases++;
        judge(bed, before, who + " " + ladder.code() + " " + values + " " + state);
        boolean worst = to == ladder.values().size() - 1;
        if (worst && bed.course.watch().newest().fired().isEmpty() && state == State.NONE) {
          unanswered.add(
              who.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                  + ": "
                  + ladder.code()
                  + " "
                  + values.get(1));
        }
      }
    }
  }

  private void judge(Bedside bed, Course before, String name) {
    var running = bed.course.episode();
    if (running != null && running.state() == EpisodeState.OPEN) {
      told++;
      return;
    }
    var judged = bed.course.watch().newest();
    if (judged.fired().isEmpty()) {
      count(judged.suppressed().isEmpty() ? "below every rule" : "within altered limits");
    } else if (!worse(before, judged)) {
      count("no step worse");
    } else if (running != null
        && running.state() != EpisodeState.HELD
        && judged.fired().stream()
            .filter(trigger -> trigger.level() != Level.LOW)
            .allMatch(
                trigger -> !trigger.severity().worseThan(answered(before).get(trigger.rule())))) {
      count("a hint while somebody is there");
    } else {
      unexplained.add(name);
    }
  }

  private static boolean worse(Course before, Judgement judged) {
    return judged.fired().stream()
        .anyMatch(t -> t.severity().worseThan(answered(before).get(t.rule())));
  }

  private static Map<String, Severity> answered(Course before) {
    var running = before.episode();
    var quiet = before.quiet();
    return running != null ? running.answered() : quiet != null ? quiet.answered() : Map.of();
  }

  private void count(String why) {
    silent.merge(why, 1, Integer::sum);
  }

  /** The first column of the table whose header begins so. */
  private static Set<String> listed(String header) throws IOException {
    var lines = Files.readAllLines(LIST);
    int start = 0;
    while (!lines.get(start).startsWith(header)) {
      start++;
    }
    return lines.subList(start + 2, lines.size()).stream()
        .takeWhile(line -> line.startsWith("|"))
        .map(line -> line.split("\\|", 3)[1].strip())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static void merge(Bedside bed) {
    var given = bed.course;
    var survivor = Course.begin("V-2");
    var gone = encounter(9, "LINDEN", null, "V-2");
    for (var decision : Bedside.ESCALATION.merged(given, survivor, gone, bed.now)) {
      if (decision.course().encounter().equals("V-2")) {
        bed.take(decision);
      }
    }
  }

  private static CarePlan plan(Instant now, List<Limit> limits, @Nullable Hold hold) {
    return new CarePlan(
            "V-1", 1, 1, limits, null, null, hold, "agreed", "-", now, now.plus(Duration.ofDays(1)))
        .approved("Dr Six", "consultant");
  }

  private static Encounter encounter(long version, String ward, @Nullable Instant discharged) {
    return encounter(version, ward, discharged, null);
  }

  private static Encounter encounter(
      long version, String ward, @Nullable Instant discharged, @Nullable String into) {
    var began = Bedside.START.minusSeconds(3600);
    return new Encounter(
        "V-1",
        new Patient("P-1", null, null, null),
        List.of(new Stay(ward, "1", began)),
        began,
        discharged,
        into,
        version);
  }
}
