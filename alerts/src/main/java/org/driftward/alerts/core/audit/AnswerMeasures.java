package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** How fast people answered, came and looked again, against what the policy asks for. */
final class AnswerMeasures {

  private static final String LOCAL = "Local policy: the ladder's own times";

  private AnswerMeasures() {}

  static List<Measure> of(View view) {
    return List.of(acknowledge(view), attend(view), reassess(view), inTime(view));
  }

  private static Measure acknowledge(View view) {
    Function<Alarm, Duration> limit =
        alarm -> view.policy().ladder().of(alarm.level()).rung(0).acknowledge();
    return new Measure(
        "time-to-acknowledge",
        "Time to acknowledge",
        "From the alarm until a person acknowledged it or came; within policy: by the first rung's"
            + " time. Alarms whose time is not over yet, or whose episode ended before it was, are"
            + " left out.",
        LOCAL,
        timed(view, Alarm::answered, Alarm::toAnswer, limit),
        null);
  }

  private static Measure attend(View view) {
    Function<Alarm, Duration> limit = alarm -> view.policy().ladder().of(alarm.level()).attend();
    return new Measure(
        "time-to-attend",
        "Time to the bedside",
        "From the alarm until a person was at the bedside; within policy: by the level's time to"
            + " attend.",
        LOCAL,
        timed(view, Alarm::attended, Alarm::toAttend, limit),
        null);
  }

  private static List<Figure> timed(
      View view,
      Function<Alarm, @Nullable Instant> done,
      Function<Alarm, @Nullable Duration> took,
      Function<Alarm, Duration> limit) {
    var judged = new ArrayList<Alarm>();
    var times = new ArrayList<Duration>();
    var traces = new ArrayList<String>();
    Map<Level, List<Alarm>> byLevel = new EnumMap<>(Level.class);
    for (var alarm : view.alarms()) {
      if (alarm.judged(done.apply(alarm), limit.apply(alarm), view.evidence().until())) {
        judged.add(alarm);
        byLevel.computeIfAbsent(alarm.level(), l -> new ArrayList<>()).add(alarm);
      }
      @Nullable Duration time = took.apply(alarm);
      if (time != null) {
        times.add(time);
        traces.add(alarm.trace());
      }
    }
    var figures = new ArrayList<>(Figures.times("Time", times, traces));
    figures.add(
        Figures.share(
            "Within policy", judged, a -> within(took.apply(a), limit.apply(a)), Alarm::trace));
    for (var level : Figures.GRAVEST_FIRST) {
      figures.add(
          Figures.share(
              "Within policy, " + level.word(),
              byLevel.getOrDefault(level, List.of()),
              a -> within(took.apply(a), limit.apply(a)),
              Alarm::trace));
    }
    return figures;
  }

  private static boolean within(@Nullable Duration took, Duration limit) {
    return took != null && took.compareTo(limit) <= 0;
  }

  private record Visit(EpisodeChange change, @Nullable Duration took, Duration limit) {
    String trace() {
      return "episode/" + change.episode().id();
    }
  }

  private static Measure reassess(View view) {
    var visits = new ArrayList<Visit>();
    var times = new ArrayList<Duration>();
    var traces = new ArrayList<String>();
    for (var change : view.evidence().changes()) {
      var episode = change.episode();
      if (change.kind().equals("attended") && view.window().holds(change.at(), episode.ward())) {
        var limit = view.policy().ladder().of(episode.level()).reassess();
        var visit = new Visit(change, nextComplete(view, change), limit);
        if (visit.took() != null) {
          times.add(visit.took());
          traces.add(visit.trace());
        }
        if (visit.took() != null || !change.at().plus(limit).isAfter(view.evidence().until())) {
          visits.add(visit);
        }
      }
    }
    var figures = new ArrayList<>(Figures.times("Time", times, traces));
    figures.add(
        Figures.share("Within policy", visits, v -> within(v.took(), v.limit()), Visit::trace));
    return new Measure(
        "time-to-reassess",
        "Time to the next complete set",
        "From arrival at the bedside until the next set with a complete score; within policy: by the"
            + " level's time to reassess.",
        LOCAL,
        figures,
        null);
  }

  private static @Nullable Duration nextComplete(View view, EpisodeChange visit) {
    return view.setsOf(visit.episode().encounter()).tailMap(visit.at(), true).values().stream()
        .filter(ObservedSet::scored)
        .findFirst()
        .map(set -> Duration.between(visit.at(), set.at()))
        .orElse(null);
  }

  /** M19: only what a published threshold raised. */
  private static Measure inTime(View view) {
    var figures = new ArrayList<Figure>();
    for (var level : List.of(Level.HIGH, Level.MEDIUM)) {
      var limit = view.policy().ladder().of(level).attend();
      var alarms =
          view.alarms().stream()
              .filter(alarm -> alarm.level() == level && byScore(alarm))
              .filter(alarm -> alarm.judged(alarm.attended(), limit, view.evidence().until()))
              .toList();
      figures.add(
          Figures.share(
              "At the bedside within " + limit.toMinutes() + " min, " + level.word(),
              alarms,
              alarm -> within(alarm.toAttend(), limit),
              Alarm::trace));
    }
    return new Measure(
        "M19",
        "Response in time",
        "Alarms by a score's threshold or a single input: at the bedside in the level's time / all"
            + " such alarms.",
        "RCP NEWS2 2017 names the thresholds; the minutes are local policy",
        figures,
        null);
  }

  private static boolean byScore(Alarm alarm) {
    return alarm.reasons().stream()
        .anyMatch(
            reason ->
                reason.level() == alarm.level()
                    && (reason.rule().startsWith("score-") || reason.rule().startsWith("single-")));
  }
}
