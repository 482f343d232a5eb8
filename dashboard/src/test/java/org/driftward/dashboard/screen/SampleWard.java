package org.driftward.dashboard.screen;

import static org.driftward.dashboard.screen.Sample.NOW;
import static org.driftward.dashboard.screen.Sample.card;
import static org.driftward.dashboard.screen.Sample.ceiling;
import static org.driftward.dashboard.screen.Sample.encounter;
import static org.driftward.dashboard.screen.Sample.episode;
import static org.driftward.dashboard.screen.Sample.open;
import static org.driftward.dashboard.screen.Sample.quiet;
import static org.driftward.dashboard.screen.Sample.score;
import static org.driftward.dashboard.screen.Sample.snapshot;
import static org.driftward.dashboard.screen.Sample.totals;

import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient.Sex;

/** The patients of the invented ward. */
final class SampleWard {

  private static final List<String> QUIET =
      List.of(
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
          "Kowalczyk, Jan");

  private SampleWard() {}

  static Card marlow() {
    return card(
        encounter("V-104", "4", "Marlow, Edith Rose", 74, Sex.FEMALE),
        snapshot("V-104", score(8, 8, 2, List.of(), List.of()), -5),
        null,
        open(
            "V-104",
            Level.HIGH,
            4,
            "NEWS2 is 8: at or above 7",
            "Rose by 6 over the usual 2 within 24 h",
            "Respiratory rate is 4.2 spreads above the usual 16 /min",
            "Next set is overdue"),
        totals(2, 2, 1, 2, 3, 4, 4, 8));
  }

  static Board board() {
    var cards = new ArrayList<Card>();
    cards.add(marlow());
    cards.add(
        card(
            encounter("V-111", "11", "Brandt-Oyelaran, Thomas", 58, Sex.MALE),
            snapshot(
                "V-111",
                score(5, 9, 1, List.of("temperature", "systolic-pressure"), List.of()),
                25),
            null,
            episode(
                "V-111",
                Level.HIGH,
                EpisodeState.ACKNOWLEDGED,
                "Rui Okafor",
                Awaiting.ATTENDANCE,
                12,
                16,
                "Consciousness scores 3: responds to voice"),
            totals(1, 0, 1, -1, 1, -5)));
    cards.add(
        card(
            encounter("V-107", "7", "Quist, Alma", 81, Sex.FEMALE),
            snapshot("V-107", score(5, 5, 4, List.of(), List.of()), 40),
            ceiling("V-107"),
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
            totals(4, 4, 3, 4, 5, 5)));
    cards.add(
        card(
            encounter("V-102", "2", "Sandoval, Iker", 39, Sex.MALE),
            snapshot("V-102", score(2, 2, 2, List.of(), List.of()), -95),
            null,
            open("V-102", Level.LOW, 2, "Set overdue by more than a third of its interval"),
            totals(2)));
    cards.add(quiet("V-109", "9", "Halloran, Bridget", 4, 45, 1, 1, 2, 2, 4));
    cards.add(
        card(
            encounter("V-115", "15", "Petrov, Lev", 47, Sex.MALE),
            snapshot("V-115", score(2, 5, 2, List.of("temperature"), List.of()), -12),
            null,
            null,
            totals(2, 2, -2)));
    cards.add(
        card(
            encounter("V-120", "20", "Bellamy, Ruth", 66, Sex.FEMALE), null, null, null, totals()));
    for (int i = 0; i < QUIET.size(); i++) {
      int total = i % 3;
      int bed = 21 + i;
      cards.add(
          quiet(
              "V-2" + i,
              String.valueOf(bed),
              QUIET.get(i),
              total,
              60 + 25 * i,
              total + (i % 4 == 0 ? 1 : 0),
              total));
    }
    return Board.of("alder", NOW, cards);
  }
}
