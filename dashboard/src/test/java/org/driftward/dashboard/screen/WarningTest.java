package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.driftward.alerts.contract.WatchDesk.Watch;
import org.driftward.dashboard.core.SetAsideReader.Missing;
import org.driftward.dashboard.core.UnscoredReader.Unscored;
import org.junit.jupiter.api.Test;

class WarningTest {

  private static final Watch WELL = new Watch(true, Duration.ofSeconds(2), List.of(), List.of());

  @Test
  void shouldSayNothingWhereAllIsWell() {
    assertThat(Warning.of(WELL, List.of(), List.of(), null)).isEmpty();
  }

  @Test
  void shouldSayThatNobodyWatches() {
    var silent = new Watch(false, Duration.ofSeconds(260), List.of(), List.of());

    var warning = Warning.of(silent, List.of(), List.of(), null).get(0);

    assertThat(warning.what())
        .isEqualTo(
            "No alarm is raised or sent: the part of Driftward that does so last showed itself 4 min"
                + " ago.");
    assertThat(warning.then()).startsWith("Watch the patients as if this page were switched off");
  }

  @Test
  void shouldSayThatNobodyWatchedYet() {
    var never = new Watch(false, null, List.of(), List.of());

    assertThat(Warning.of(never, List.of(), List.of(), null))
        .extracting(Warning::what)
        .containsExactly(
            "No alarm is raised or sent: the part of Driftward that does so has not shown itself.");
  }

  @Test
  void shouldNameWhoHasNotBeenScored() {
    var one = new Unscored("V-1", "alder", "4");
    var other = new Unscored("V-2", "alder", null);

    assertThat(Warning.of(WELL, List.of(one, other), List.of(), null))
        .extracting(Warning::what)
        .containsExactly(
            "What was recorded last has not been scored: alder bed 4, a patient without a bed on"
                + " alder.");
  }

  @Test
  void shouldNotNameAWholeHospital() {
    var all =
        IntStream.rangeClosed(1, 10)
            .mapToObj(bed -> new Unscored("V-" + bed, "elm", "" + bed))
            .toList();

    assertThat(Warning.of(WELL, all, List.of(), null).get(0).what())
        .contains("elm bed 7, elm bed 8 and 2 patients more.");
  }

  @Test
  void shouldPutTheMostDangerousFirst() {
    var worst = new Watch(false, null, List.of(), List.of());
    var failing = new Watch(true, Duration.ZERO, List.of("alarm-sender"), List.of());
    var unscored = new Unscored("V-1", "elm", "1");
    var deaf = Duration.ofMinutes(2);

    assertThat(Warning.of(worst, List.of(unscored), List.of(), deaf))
        .extracting(Warning::what)
        .satisfiesExactly(
            first -> assertThat(first).startsWith("No alarm is raised"),
            second -> assertThat(second).isEqualTo("Nothing new has reached this page for 2 min."),
            third -> assertThat(third).startsWith("What was recorded last"));
    assertThat(Warning.of(failing, List.of(), List.of(), null))
        .extracting(Warning::what)
        .containsExactly(
            "Alarms may come late or not at all: part of what raises and sends them fails"
                + " (alarm-sender).");
  }

  @Test
  void shouldSayWhatDoesNotHappenForWhomInOneSentenceForEachMeaning() {
    var deaf = "Alarms can be neither raised nor followed up.";
    var missing =
        List.of(
            new Missing(deaf, "V-1", "heron", "4"),
            new Missing("A message is not sent.", "V-2", "heron", "5"),
            new Missing(deaf, "V-3", "heron", null));

    assertThat(Warning.of(WELL, List.of(), missing, null))
        .extracting(Warning::what)
        .containsExactly(
            deaf + " This concerns heron bed 4, a patient without a bed on heron.",
            "A message is not sent. This concerns heron bed 5.");
  }
}
