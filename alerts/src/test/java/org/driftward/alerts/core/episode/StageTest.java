package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Move.Refused;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.policy.Response;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Word;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every event in every state, against the table in {@code docs/episodes.md}. */
class StageTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final Owner ANNA = new Owner("a", "Anna");
  private static final Owner BERT = new Owner("b", "Bert");
  private static final Response RESPONSE = PolicyFile.shipped().policy().ladder().high();
  private static final Turn BY_BERT = new Turn(NOW, BERT, RESPONSE, NOW.minusSeconds(60));

  /** The events by the names of the table's columns. */
  private static final Map<String, BiFunction<Stage, Standing, Move>> EVENTS = events();

  private static Map<String, BiFunction<Stage, Standing, Move>> events() {
    var events = new LinkedHashMap<String, BiFunction<Stage, Standing, Move>>();
    events.put("acknowledge", (stage, now) -> stage.acknowledge(now, BY_BERT));
    events.put("attend", (stage, now) -> stage.attend(now, BY_BERT));
    events.put("hand over", (stage, now) -> stage.handOver(now, BERT));
    events.put("hold", (stage, now) -> stage.hold(now, BY_BERT, NOW.plusSeconds(600)));
    events.put("escalate", (stage, now) -> stage.escalate(now, BY_BERT));
    events.put("close", (stage, now) -> stage.close(now, BY_BERT));
    events.put("clock runs out", (stage, now) -> stage.clockRanOut(now, BY_BERT));
    events.put("owner gone, taken over", (stage, now) -> stage.passOn(now, BERT));
    events.put("owner gone, somebody there", (stage, now) -> stage.callUpon(now, BERT, BY_BERT));
    events.put("owner gone, nobody there", (stage, now) -> stage.abandoned(now, BY_BERT));
    events.put("another ward", (stage, now) -> stage.transferred(now, BY_BERT));
    return events;
  }

  static Stream<Arguments> table() throws IOException {
    var rows = new ArrayList<Arguments>();
    var lines = Files.readAllLines(Path.of("..", "docs", "episodes.md"));
    int header = indexOf(lines, "| state |");
    var columns = cells(lines.get(header));
    for (var line : lines.subList(header + 2, lines.size())) {
      if (!line.startsWith("|")) {
        break;
      }
      var cells = cells(line);
      for (int i = 1; i < cells.size(); i++) {
        rows.add(Arguments.of(cells.get(0), columns.get(i), cells.get(i)));
      }
    }
    return rows.stream();
  }

  private static int indexOf(List<String> lines, String start) {
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(start)) {
        return i;
      }
    }
    throw new IllegalStateException("no table");
  }

  private static List<String> cells(String line) {
    return Stream.of(line.split("\\|")).map(String::strip).filter(cell -> !cell.isEmpty()).toList();
  }

  @ParameterizedTest
  @MethodSource("table")
  void shouldDoWhatTheTableSays(String state, String event, String outcome) {
    var standing = standing(state);

    var move = EVENTS.get(event).apply(Stage.of(standing), standing);

    assertThat(described(move)).isEqualTo(outcome);
  }

  @Test
  void shouldTabulateEveryStateAndEvent() throws IOException {
    assertThat(table()).hasSize(6 * EVENTS.size());
  }

  private static String described(Move move) {
    return move instanceof To to ? to.standing().state().word() + ", " + to.kind() : "refused";
  }

  private static Standing standing(String state) {
    var due = NOW.plusSeconds(300);
    return switch (state) {
      case "open, nobody's" -> new Standing(EpisodeState.OPEN, null, 0, due, NOW);
      case "open, somebody's" -> new Standing(EpisodeState.OPEN, ANNA, 0, due, NOW);
      case "closed" -> new Standing(EpisodeState.CLOSED, null, 0, null, NOW);
      default -> new Standing(Word.parse(EpisodeState.class, state), ANNA, 0, due, NOW);
    };
  }

  @Test
  void shouldRefuseToRecordTheSameAttendanceTwice() {
    var standing = new Standing(EpisodeState.ATTENDED, BERT, 0, NOW.plusSeconds(9), NOW);

    assertThat(Stage.ATTENDED.attend(standing, BY_BERT)).isInstanceOf(Refused.class);
  }

  @Test
  void shouldRefuseToHandOverToTheOwner() {
    var standing = new Standing(EpisodeState.ACKNOWLEDGED, BERT, 0, NOW.plusSeconds(9), NOW);

    assertThat(Stage.ACKNOWLEDGED.handOver(standing, BERT)).isInstanceOf(Refused.class);
  }

  @Test
  void shouldClimbToTheNextRungAndStayAtTheLast() {
    var standing = Standing.open(null, 0, NOW, NOW);
    var rungs = new ArrayList<Integer>();

    for (int i = 0; i < 4; i++) {
      standing = ((To) Stage.OPEN.clockRanOut(standing, BY_BERT)).standing();
      rungs.add(standing.rung());
    }

    assertThat(rungs).containsExactly(1, 2, 2, 2);
  }

  @Test
  void shouldCountAttendanceFromTheAlarmAndNotFromTheAnswer() {
    var alarmed = NOW.minus(Duration.ofMinutes(10));
    var turn = new Turn(NOW, BERT, RESPONSE, alarmed);

    var to = (To) Stage.OPEN.acknowledge(standing("open, nobody's"), turn);

    assertThat(to.standing().due()).isEqualTo(alarmed.plus(Duration.ofMinutes(30)));
  }

  @Test
  void shouldLeaveTheLateAnswererTheTimeOfTheRung() {
    var turn = new Turn(NOW, BERT, RESPONSE, NOW.minus(Duration.ofHours(2)));

    var to = (To) Stage.OPEN.acknowledge(standing("open, nobody's"), turn);

    assertThat(to.standing().due()).isEqualTo(NOW.plus(Duration.ofMinutes(5)));
  }

  @Test
  void shouldKeepItsRungAndItsTimeWhenTheOwnerOfAnUnansweredAlarmGoesOffDuty() {
    var standing = Standing.open(ANNA, 1, NOW.plusSeconds(30), NOW);

    var after = ((To) Stage.OPEN.abandoned(standing, BY_BERT)).standing();

    assertThat(after).isEqualTo(Standing.open(null, 1, NOW.plusSeconds(30), NOW));
  }

  @Test
  void shouldNeverGiveAnOpenEpisodeMoreTimeBecauseItGotWorse() {
    var standing = Standing.open(null, 0, NOW.plusSeconds(30), NOW);

    assertThat(Stage.OPEN.alarm(standing, BY_BERT).due()).isEqualTo(NOW.plusSeconds(30));
  }

  @Test
  void shouldCallAgainWhenItGetsWorseAfterAnAnswer() {
    var standing = standing("attended");

    var after = Stage.ATTENDED.alarm(standing, BY_BERT);

    assertThat(after.state()).isEqualTo(EpisodeState.OPEN);
    assertThat(after.owner()).isEqualTo(ANNA);
    assertThat(after.due()).isEqualTo(NOW.plus(Duration.ofMinutes(5)));
  }

  @Test
  void shouldNotRestForThatAHoldHasNotSeen() {
    var after = Stage.HELD.alarm(standing("held"), BY_BERT);

    assertThat(after).isEqualTo(Standing.open(ANNA, 0, NOW.plus(Duration.ofMinutes(5)), NOW));
  }

  @Test
  void shouldNeverStandWithoutAnOwnerOrAClock() {
    assertThatThrownBy(() -> new Standing(EpisodeState.OPEN, null, 0, null, NOW))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Standing(EpisodeState.ATTENDED, null, 0, NOW, NOW))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Standing(EpisodeState.CLOSED, null, 0, NOW, NOW))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
