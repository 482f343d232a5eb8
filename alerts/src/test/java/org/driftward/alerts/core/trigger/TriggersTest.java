package org.driftward.alerts.core.trigger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Each rule of the shipped policy, at its edge from both sides. Thresholds: RCP NEWS2 2017, chart
 * 4; accumulated limit 5: the tabular CUSUM of Montgomery, table 9.1; the others are our choice.
 */
class TriggersTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:10:00Z");
  private static final Triggers TRIGGERS =
      new Triggers(
          PolicyFile.shipped().policy().triggers(),
          Catalogue.shipped(),
          new Wording(Catalogue.shipped(), ZoneOffset.UTC));

  private final Pictures picture = Pictures.of("V-1", NOW);

  @Test
  void shouldSayWhichPointsMakeTheTotal() {
    var fired =
        fired(
            picture
                .score(8)
                .input("respiratory-rate", "25", "/min", 3)
                .input("temperature", "39.1", "Cel", 2)
                .input("heart-rate", "80", "/min", 0));

    assertThat(fired)
        .extracting(Trigger::words)
        .containsExactly(
            "NEWS2 8 at 03:10 (7 or more): respiratory rate 25 /min scores 3,"
                + " temperature 39.1 °C scores 2",
            "Respiratory rate 25 /min at 03:10 scores 3 in NEWS2");
  }

  @Test
  void shouldSayAtLeastWhenTheSetIsIncomplete() {
    assertThat(fired(picture.score(7, 10, "temperature")).get(0).words())
        .isEqualTo("NEWS2 at least 7 at 03:10 (7 or more)");
  }

  @Test
  void shouldNotAskForWhatCannotMatter() {
    assertThat(fired(picture.score(4, 6, "temperature"))).as("never a 7").isEmpty();
    assertThat(fired(picture.score(7, 9, "temperature"))).as("a 7 already").hasSize(1);
  }

  @Test
  void shouldNoticeARiseOfThreeOverThePatientsOwnLevel() {
    assertThat(fired(picture.score(3).usual("0.5"))).isEmpty();

    var rise = fired(picture.score(4).usual("1")).get(0);

    assertThat(rise.level()).isEqualTo(Level.MEDIUM);
    assertThat(rise.words()).isEqualTo("NEWS2 4 at 03:10, 3 above this patient's usual 1");
  }

  @Test
  void shouldNoticeDriftInTheSecondSetRunning() {
    var drift = drift("heart-rate", 96, 4.2, true, 2);
    var first = TRIGGERS.evaluate(picture.drift(drift).build(), Recent.NOTHING, Limits.NONE);
    assertThat(first.fired()).isEmpty();

    var later = Pictures.of("V-1", NOW.plusSeconds(3600)).drift(drift).build();
    var second = TRIGGERS.evaluate(later, Recent.NOTHING.plus(first.mark()), Limits.NONE);

    assertThat(second.fired())
        .extracting(Trigger::words)
        .containsExactly(
            "Heart rate 96 /min at 04:10, 4.2 spreads above this patient's usual 72,"
                + " in 2 sets running");
  }

  @Test
  void shouldNoticeSmallDriftThatAddsUpTheWrongWay() {
    assertThat(fired(picture.drift(drift("oxygen-saturation", 94, -1, false, -4.9)))).isEmpty();
    assertThat(fired(Pictures.of("V-1", NOW).drift(drift("oxygen-saturation", 98, 1, false, 9))))
        .as("a saturation that improves")
        .isEmpty();

    var fired = fired(Pictures.of("V-1", NOW).drift(drift("oxygen-saturation", 94, -1, false, -5)));

    assertThat(fired).extracting(Trigger::rule).containsExactly("accumulated-oxygen-saturation");
  }

  @Test
  void shouldNoticeATrendThatCrossesWithinSixHours() {
    var crossing = NOW.plus(Duration.ofHours(6));
    assertThat(fired(picture.trend(trend(1.5, true, crossing.plusMillis(1), 21)))).isEmpty();

    var fired = fired(Pictures.of("V-1", NOW).trend(trend(1.5, true, crossing, 21)));

    assertThat(fired)
        .extracting(Trigger::words)
        .containsExactly(
            "Respiratory rate rising by 1.5 an hour over 6 values (p 0.010);"
                + " may reach 21 at 09:10");
  }

  @Test
  void shouldNotCallASmallChanceNone() {
    var soon = NOW.plusSeconds(3600);

    assertThat(fired(picture.trend(trend(1.5, 0.0004, true, soon, 21))))
        .extracting(Trigger::words)
        .singleElement()
        .asString()
        .contains("(p below 0.001)");
    assertThat(fired(Pictures.of("V-1", NOW).trend(trend(1.5, 0.001, true, soon, 21))))
        .extracting(Trigger::words)
        .singleElement()
        .asString()
        .contains("(p 0.001)");
  }

  @Test
  void shouldNotCallAReturnToNormalATrend() {
    var soon = NOW.plusSeconds(3600);

    assertThat(fired(picture.trend(trend(-1.5, true, soon, 24)))).isEmpty();
    assertThat(fired(Pictures.of("V-1", NOW).trend(trend(1.5, false, soon, 21))))
        .as("not significant")
        .isEmpty();
  }

  @Test
  void shouldGroupChangedFindingsByBodyFunction() {
    var fired =
        fired(
            picture
                .changed(changed("pupil-size", Group.BRAIN, "left pupil larger by 2 mm"))
                .changed(changed("limb-power", Group.BRAIN, "right arm weaker, 5 to 3"))
                .changed(changed("wheeze", Group.BREATHING, "new wheeze")));

    assertThat(fired)
        .extracting(Trigger::rule, Trigger::level)
        .containsExactly(
            tuple("changed-brain", Level.MEDIUM), tuple("changed-breathing", Level.LOW));
    assertThat(fired.get(0).words())
        .isEqualTo(
            "Brain: left pupil larger by 2 mm, since 03:10; right arm weaker, 5 to 3, since 03:10");
  }

  @Test
  void shouldMindPartialSetsOnlyWhenTheyGoOn() {
    var partial = picture.partial("temperature");
    assertThat(fired(partial)).isEmpty();

    var before = Recent.NOTHING.plus(new Mark(NOW.minusSeconds(3600), Map.of(), Set.of(), true));
    var fired = TRIGGERS.evaluate(partial.build(), before, Limits.NONE).fired();

    assertThat(fired)
        .extracting(Trigger::words)
        .containsExactly("2 sets running incomplete; the newest at 03:10 lacks temperature");
  }

  private static List<Trigger> fired(Pictures picture) {
    return TRIGGERS.evaluate(picture.build(), Recent.NOTHING, Limits.NONE).fired();
  }

  private static Drift drift(
      String code, double value, double drift, boolean worse, double accumulated) {
    var unit = code.equals("heart-rate") ? "/min" : "%";
    return new Drift(code, null, null, value, unit, 72, 5, drift, worse, accumulated, 8, NOW, NOW);
  }

  private static Trend trend(
      double perHour, boolean significant, @Nullable Instant crossing, double threshold) {
    return trend(perHour, 0.01, significant, crossing, threshold);
  }

  private static Trend trend(
      double perHour,
      double pValue,
      boolean significant,
      @Nullable Instant crossing,
      double threshold) {
    return new Trend(
        "respiratory-rate",
        null,
        null,
        perHour,
        pValue,
        11,
        6,
        NOW,
        significant,
        crossing,
        null,
        null,
        threshold);
  }

  private static ChangedFinding changed(String code, Group group, String words) {
    return new ChangedFinding(
        code, null, null, Scalar.of(BigDecimal.ONE), Scalar.of(BigDecimal.TEN), NOW, group, words);
  }
}
