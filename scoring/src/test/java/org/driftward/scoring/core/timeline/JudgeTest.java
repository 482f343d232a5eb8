package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What belongs to a moment: which findings are one look, which still serve, whose scores apply. */
class JudgeTest {

  private static final Finding BREATHING = Finding.quantity("respiratory-rate", "16", "/min");
  private static final Finding SATURATION = Finding.quantity("oxygen-saturation", "97", "%");
  private static final Finding PRESSURE = Finding.quantity("systolic-pressure", "120", "mm[Hg]");
  private static final Finding PULSE = Finding.quantity("heart-rate", "70", "/min");
  private static final Finding ALERT = Finding.coded("consciousness", "alert");
  private static final Finding TEMPERATURE = Finding.quantity("temperature", "36.8", "Cel");

  private static final Standing NOBODY = new Standing("V-1", Facts.NONE, Head.EMPTY, 0);

  private static Course course() {
    return new Course(Fixtures.timeline());
  }

  /** Policy, spacing: values closer together than a quarter of an hour are one look. */
  @ParameterizedTest
  @CsvSource({"14, true", "15, false"})
  void shouldTakeValuesMinutesApartForOneLook(int minutes, boolean one) {
    var latest =
        course()
            .observe(0, BREATHING, SATURATION)
            .observe(minutes / 60.0, PRESSURE, PULSE, ALERT, TEMPERATURE)
            .latest();

    assertThat(latest.partial().isEmpty()).isEqualTo(one);
    assertThat(latest.lastSet()).isEqualTo(Course.hour(minutes / 60.0));
    if (!one) {
      assertThat(latest.partial())
          .containsExactlyInAnyOrder("respiratory-rate", "oxygen-saturation");
    }
  }

  @Test
  void shouldNotTakeAnotherFindingForTheOneThatIsMissing() {
    var latest =
        course()
            .observe(0, BREATHING, SATURATION, PRESSURE, ALERT, TEMPERATURE)
            .observe(0.1, SATURATION, BREATHING, PRESSURE, ALERT)
            .latest();

    assertThat(latest.partial()).containsExactly("heart-rate");
  }

  /** Policy, validity: six hours, the last instant included. */
  @ParameterizedTest
  @CsvSource({"12, true", "12.01, false"})
  void shouldSayTheDriftOfAValueAsLongAsItServes(double hour, boolean serves) {
    var latest =
        course()
            .breathing(0, 6, 16)
            .observe(6, Finding.quantity("respiratory-rate", "26", "/min"))
            .observe(hour, TEMPERATURE)
            .latest();

    assertThat(latest.drift().stream().map(Drift::code).toList().contains("respiratory-rate"))
        .isEqualTo(serves);
  }

  /** NEWS2 is for adults from 16 (RCP 2017); who is born on the day is no year old, not ageless. */
  @Test
  void shouldKnowANewbornFromAPatientWithoutABirthDate() {
    var day = LocalDate.ofInstant(Course.START, ZoneOffset.UTC);

    assertThat(scoresOfOneBorn(day)).doesNotContain("news2");
    assertThat(scoresOfOneBorn(null)).contains("news2");
    assertThat(scoresOfOneBorn(day.plusDays(1)))
        .as("the day begins later here")
        .isEqualTo(scoresOfOneBorn(day));
    assertThat(scoresOfOneBorn(day.plusYears(2))).as("a slip of the pen").contains("news2");
  }

  private static List<String> scoresOfOneBorn(@Nullable LocalDate day) {
    var timeline = Fixtures.timeline();
    var entries = new MemoryEntries();
    var told = Stories.encounter("V-1", 1, day, List.of(Course.stay("ward-1", -1)), null);
    var known = timeline.take(NOBODY, entries, told, null).standing();
    var said = timeline.take(known, entries, entry(0), null).snapshots();
    return said.get(0).scores().stream().map(Score::id).toList();
  }

  @Test
  void shouldKeepAHeadEverySoManySetsCountedFromTheFirst() {
    var timeline = Fixtures.timeline();
    var entries = new MemoryEntries();
    var standing = NOBODY;
    var kept = new ArrayList<Long>();
    var said = new ArrayList<Snapshot>();
    for (int hour = 0; hour < 7; hour++) {
      var outcome = timeline.take(standing, entries, entry(hour), null);
      entries.keep(outcome);
      standing = outcome.standing();
      outcome.checkpoints().forEach(head -> kept.add(head.sets()));
      said.addAll(outcome.snapshots());
    }

    assertThat(kept).containsExactly(3L, 6L);
    assertThat(said).hasSize(7);
  }

  @Test
  void shouldKnowTheEditionsItHas() {
    var editions =
        Fixtures.timeline().editions().with(Fixtures.edition(80, "second", Course.hour(1)));

    assertThat(editions.versions()).contains("second").allMatch(editions::knows);
    assertThat(editions.knows(PolicyFile.shipped().version())).isTrue();
    assertThat(editions.knows("third")).isFalse();
  }

  private static Entry entry(int hour) {
    var at = Course.hour(hour);
    return Entry.of(
        new Assessment(
            "A-" + hour,
            1,
            Status.FINAL,
            "V-1",
            "P-1",
            at,
            at,
            Source.BEDSIDE,
            "n-1",
            null,
            List.of(BREATHING, SATURATION, PRESSURE, PULSE, ALERT, TEMPERATURE)));
  }
}
