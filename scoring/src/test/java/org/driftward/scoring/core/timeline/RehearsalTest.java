package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.Preview.Known;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Told;
import org.junit.jupiter.api.Test;

/** What is foreseen must be what is said once the assessment has come. */
class RehearsalTest {

  private static final Encounter ENCOUNTER =
      Stories.encounter(
          "V-1",
          1,
          LocalDate.of(1951, 3, 1),
          List.of(new Stay("ward-1", "1", Stories.START.minus(Duration.ofHours(1)))),
          null);

  /** The topology's own timeline, record by record, is the reference. */
  @Property
  void shouldForeseeWhatTheTimelineSaysAfterwards(
      @ForAll long seed, @ForAll @IntRange(max = 12) int earlier, @ForAll boolean correction) {
    var random = new Random(seed);
    var known = new ArrayList<Assessment>();
    for (int i = 0; i <= earlier; i++) {
      known.add(Stories.assessment(random, "V-1", "A-" + i, 1));
    }
    var id = correction ? "A-" + random.nextInt(earlier + 1) : "A-new";
    var draft = counting(Stories.assessment(random, "V-1", id, 2));
    var office = new Office(Fixtures.timeline());
    office.receive(new Told(ENCOUNTER));
    known.forEach(each -> office.receive(new Observed(each)));
    var newestBefore = office.listener().latest().get("V-1");

    var foreseen = Fixtures.timeline().preview().of(new Known(ENCOUNTER, List.of(), known), draft);

    office.receive(new Observed(draft));
    assertThat(Listener.bare(foreseen.draft()))
        .isEqualTo(office.listener().known().get("V-1").get(id));
    assertThat(Listener.bare(foreseen.newest())).isEqualTo(office.listener().latest().get("V-1"));
    assertThat(foreseen.before()).isNotNull();
    assertThat(Listener.bare(foreseen.before())).isEqualTo(newestBefore);
  }

  /** RCP NEWS2 2017, chart 1: 24/min is 2, 93 % is 2, air 0, 108 mmHg 1, 118/min 2, 38.4 is 1. */
  @Test
  void shouldGiveBoundsWhileTheSetIsIncomplete() {
    var known = new Known(ENCOUNTER, List.of(), List.of());
    var partial = set("A-1", Stories.START, vitals().subList(0, 5));

    var score = Fixtures.timeline().preview().of(known, partial).draft().leading();

    // Missing: consciousness, 0 or 3, and temperature, 0 to 3.
    assertThat(score).isNotNull();
    assertThat(score.low()).isEqualByComparingTo("7");
    assertThat(score.high()).isEqualByComparingTo("13");
    assertThat(score.missing()).containsExactlyInAnyOrder("consciousness", "temperature");
    var whole = set("A-1", Stories.START, vitals());
    var settled = Fixtures.timeline().preview().of(known, whole).draft().leading();
    assertThat(settled).isNotNull();
    assertThat(settled.complete()).isTrue();
    assertThat(settled.low()).isEqualByComparingTo("8");
  }

  @Test
  void shouldKnowALateEntryFromTheNewestPicture() {
    var newest = set("A-1", Stories.START.plus(Duration.ofHours(2)), vitals());
    var known = new Known(ENCOUNTER, List.of(), List.of(newest));

    var outlook =
        Fixtures.timeline().preview().of(known, set("A-0", Stories.START, vitals().subList(0, 1)));

    assertThat(outlook.late()).isTrue();
    assertThat(outlook.draft().assessment()).isEqualTo("A-0");
    assertThat(outlook.newest().assessment()).isEqualTo("A-1");
  }

  @Test
  void shouldHaveNothingToSayOfARetraction() {
    var retraction =
        new Assessment(
            "A-1",
            2,
            Status.RETRACTED,
            "V-1",
            "P-1",
            Stories.START,
            Stories.START,
            Source.BEDSIDE,
            "n-1",
            "wrong patient",
            List.of());
    var preview = Fixtures.timeline().preview();
    var known = new Known(ENCOUNTER, List.of(), List.of());

    assertThatThrownBy(() -> preview.of(known, retraction))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static List<Finding> vitals() {
    return List.of(
        Finding.quantity("respiratory-rate", "24", "/min"),
        Finding.quantity("oxygen-saturation", "93", "%"),
        Finding.coded("inspired-oxygen", "air"),
        Finding.quantity("systolic-pressure", "108", "mm[Hg]"),
        Finding.quantity("heart-rate", "118", "/min"),
        Finding.coded("consciousness", "alert"),
        Finding.quantity("temperature", "38.4", "Cel"));
  }

  private static Assessment set(String id, Instant takenAt, List<Finding> findings) {
    return new Assessment(
        id, 1, Status.FINAL, "V-1", "P-1", takenAt, takenAt, Source.BEDSIDE, "n-1", null, findings);
  }

  private static Assessment counting(Assessment one) {
    return new Assessment(
        one.id(),
        one.revision(),
        Status.AMENDED,
        one.encounter(),
        one.patient(),
        one.takenAt(),
        one.recordedAt(),
        one.source(),
        one.by(),
        "typing error",
        one.findings());
  }
}
