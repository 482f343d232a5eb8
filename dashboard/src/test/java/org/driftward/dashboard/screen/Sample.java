package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Level;
import org.driftward.alerts.contract.Reason;
import org.driftward.dashboard.contract.Setting;
import org.driftward.scoring.contract.Score;
import org.jspecify.annotations.Nullable;

/** An invented ward at one moment of one night. */
final class Sample {

  static final Instant NOW = Instant.parse("2026-01-05T03:12:00Z");

  private Sample() {}

  static Frame frame(String here) {
    return new Frame(
        new Setting(true, 60),
        NOW,
        ZoneOffset.UTC,
        "Ines Varga",
        List.of(
            new Frame.Link("/wards/alder", "Ward alder"), new Frame.Link("/response", "Response")),
        here,
        "token-of-the-test");
  }

  static Instant ago(int minutes) {
    return NOW.minus(Duration.ofMinutes(minutes));
  }

  static Instant in(int minutes) {
    return NOW.plus(Duration.ofMinutes(minutes));
  }

  static Score score(int low, int high, @Nullable Integer usual, String... missing) {
    return new Score(
        "news2",
        "NEWS2",
        "2017",
        BigDecimal.valueOf(low),
        BigDecimal.valueOf(high),
        missing.length == 0,
        "medium",
        "high",
        3,
        usual == null ? null : BigDecimal.valueOf(usual),
        List.of(missing),
        List.of());
  }

  static Episode open(String encounter, Level level, int minutes, String... reasons) {
    return episode(
        encounter, level, EpisodeState.OPEN, null, Awaiting.ACKNOWLEDGEMENT, 11, minutes, reasons);
  }

  static Episode episode(
      String encounter,
      Level level,
      EpisodeState state,
      @Nullable String owner,
      Awaiting awaiting,
      int dueIn,
      int openedAgo,
      String... reasons) {
    return new Episode(
        "E-" + encounter,
        2,
        encounter,
        "alder",
        "4",
        state,
        level,
        owner == null ? null : owner.toLowerCase(java.util.Locale.ROOT).replace(' ', '.'),
        owner,
        ago(openedAgo),
        in(dueIn),
        awaiting,
        1,
        level == Level.HIGH ? "charge nurse, response team" : "charge nurse",
        List.of(reasons).stream()
            .map(words -> new Reason("a-rule", level, words, ago(openedAgo)))
            .toList(),
        null,
        null,
        null,
        null);
  }

  static PatientLine concerned(
      Episode episode,
      String bed,
      String name,
      String about,
      Score score,
      Movement moving,
      int nextSetIn,
      Action... actions) {
    return new PatientLine(
        episode.encounter(),
        "alder",
        bed,
        PersonName.of(name),
        about,
        Sign.of(episode.level()),
        ScoreMark.of(score),
        moving,
        episode.reasons().stream().map(Reason::words).toList(),
        Hand.of(episode),
        Countdown.due(in(nextSetIn), "due in", "overdue by"),
        List.of(actions).stream().map(action -> Act.of(episode, action)).toList());
  }

  static PatientLine quiet(
      String encounter, String bed, String name, int low, int high, Movement moving, int setIn) {
    return new PatientLine(
        encounter,
        "alder",
        bed,
        PersonName.of(name),
        "61 y, female",
        null,
        ScoreMark.of(low == high ? score(low, high, low) : score(low, high, low, "temperature")),
        moving,
        List.of(),
        null,
        Countdown.due(in(setIn), "due in", "overdue by"),
        List.of());
  }

  static BoardScreen board() {
    var lines = new ArrayList<PatientLine>();
    lines.add(
        concerned(
            open(
                "V-104",
                Level.HIGH,
                4,
                "NEWS2 is 8: at or above 7",
                "Rose by 6 over the usual 2 within 24 h",
                "Respiratory rate is 4.2 spreads above the usual 16 /min",
                "Next set is overdue"),
            "4",
            "Marlow, Edith Rose",
            "74 y, female",
            score(8, 8, 2),
            Movement.RISING,
            -5,
            Action.ACKNOWLEDGE,
            Action.ATTEND));
    lines.add(
        concerned(
            episode(
                "V-111",
                Level.HIGH,
                EpisodeState.ACKNOWLEDGED,
                "Rui Okafor",
                Awaiting.ATTENDANCE,
                12,
                16,
                "Consciousness scores 3: responds to voice"),
            "11",
            "Brandt-Oyelaran, Thomas",
            "58 y, male",
            score(5, 9, 1, "temperature", "systolic-pressure"),
            Movement.RISING,
            25,
            Action.ATTEND));
    lines.add(
        concerned(
            episode(
                "V-107",
                Level.MEDIUM,
                EpisodeState.ATTENDED,
                "Ines Varga",
                Awaiting.REASSESSMENT,
                -3,
                55,
                "NEWS2 is 5: at or above 5",
                "Left hand grip is weaker: 5 to 3"),
            "7",
            "Quist, Alma",
            "81 y, female",
            score(5, 5, 4),
            Movement.STEADY,
            40,
            Action.ATTEND));
    lines.add(
        concerned(
            open("V-102", Level.LOW, 2, "Set overdue by more than a third of its interval"),
            "2",
            "Sandoval, Iker",
            "39 y, male",
            score(2, 2, 2),
            Movement.UNKNOWN,
            -95,
            Action.ACKNOWLEDGE));
    lines.add(quiet("V-109", "9", "Halloran, Bridget", 3, 3, Movement.RISING, 45));
    lines.add(quiet("V-115", "15", "Petrov, Lev", 2, 5, Movement.STEADY, -12));
    String[] names = {
      "Abara, Chidi",
      "Lindqvist, Sven",
      "Moreau, Celeste",
      "Tanaka, Yori",
      "Novak, Petra",
      "Ferreira, Joana",
      "Whitlock, Amos",
      "Eriksen, Dag",
      "Castellanos, Maria Dolores",
      "Imran, Sadia",
      "Vogel, Karl",
      "Osei, Abena",
      "Kowalczyk, Jan",
      "Reyes, Lucia"
    };
    for (int i = 0; i < names.length; i++) {
      lines.add(
          quiet(
              "V-2" + i,
              String.valueOf(i < 1 ? 1 : i + (i > 8 ? 7 : 2)),
              names[i],
              i % 3,
              i % 3,
              i % 4 == 0 ? Movement.FALLING : Movement.STEADY,
              60 + 25 * i));
    }
    return BoardScreen.of("alder", NOW, lines);
  }
}
