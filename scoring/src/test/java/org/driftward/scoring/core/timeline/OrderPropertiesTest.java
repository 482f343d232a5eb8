package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival.Observed;

/** Promise 1 of the design: order does not matter. */
class OrderPropertiesTest {

  @Provide
  Arbitrary<List<Arrival>> stories() {
    return Stories.any(14);
  }

  @Property
  void shouldEndTheSameWhateverTheOrderRepetitionAndRestarts(
      @ForAll("stories") List<Arrival> story, @ForAll long one, @ForAll long other) {
    var first = heard(Stories.arriving(story, one), 0, one);
    var second = heard(Stories.arriving(story, other), 4, other);

    assertThat(Stories.own(second.known(), story)).isEqualTo(Stories.own(first.known(), story));
    assertThat(second.latest()).isEqualTo(first.latest());
  }

  @Property
  void shouldEndLikeOneFoldOverTheFinishedHistory(
      @ForAll("stories") List<Arrival> story, @ForAll long seed) {
    var heard = heard(Stories.arriving(story, seed), 6, seed);

    assertThat(counting(heard.known()))
        .isEqualTo(FinishedHistory.snapshots(story, Fixtures.timeline().editions()));
  }

  /** Two editions, adopted somewhere on the way; the second may reach back before the first. */
  @Property
  void shouldEndTheSameWheneverAnEditionIsAdopted(
      @ForAll("stories") List<Arrival> story, @ForAll long seed) {
    var random = new Random(seed);
    var arriving = Stories.arriving(story, seed);
    var office = new Office(Fixtures.timeline());
    var first = Fixtures.edition(80, "first", Stories.START.plusSeconds(random.nextInt(120_000)));
    var second = Fixtures.edition(90, "second", Stories.START.plusSeconds(random.nextInt(120_000)));
    int one = random.nextInt(arriving.size() + 1);
    int other = one + random.nextInt(arriving.size() + 1 - one);
    for (int i = 0; i <= arriving.size(); i++) {
      if (i == one) {
        office.adopt(first);
      }
      if (i == other) {
        office.adopt(second);
      }
      if (i < arriving.size()) {
        if (random.nextInt(5) == 0) {
          office.restart();
        }
        office.receive(arriving.get(i));
      }
    }
    office.catchUp();

    var both = Fixtures.timeline().editions().with(first).with(second);
    assertThat(counting(office.listener().known()))
        .isEqualTo(FinishedHistory.snapshots(story, both));
  }

  @Property
  void shouldLeaveAfterARetractionWhatNeverHavingSentItLeaves(
      @ForAll("stories") List<Arrival> story, @ForAll long seed) {
    var retracted = "A-0";
    var never = story.stream().filter(arrival -> !Stories.is(arrival, retracted)).toList();
    var withRetraction =
        Stream.concat(
                story.stream(),
                story.stream()
                    .filter(arrival -> Stories.is(arrival, retracted))
                    .limit(1)
                    .map(OrderPropertiesTest::retraction))
            .toList();

    var after = heard(Stories.arriving(withRetraction, seed), 5, seed);
    var without = heard(Stories.arriving(never, seed), 5, seed);

    assertThat(counting(after.known())).isEqualTo(counting(without.known()));
    assertThat(after.latest()).isEqualTo(without.latest());
  }

  /**
   * @param restarts one restart for so many records, or none at 0
   */
  private static Listener heard(List<Arrival> arriving, int restarts, long seed) {
    var random = new Random(seed);
    var office = new Office(Fixtures.timeline());
    for (var arrival : arriving) {
      if (restarts > 0 && random.nextInt(restarts) == 0) {
        office.restart();
      }
      office.receive(arrival);
    }
    return office.listener();
  }

  /** Without those that are void. */
  private static Map<String, Map<String, Snapshot>> counting(
      Map<String, Map<String, Snapshot>> known) {
    var counting = new TreeMap<String, Map<String, Snapshot>>();
    known.forEach(
        (encounter, snapshots) -> {
          var valid = new TreeMap<>(snapshots);
          valid.values().removeIf(Snapshot::withdrawn);
          if (!valid.isEmpty()) {
            counting.put(encounter, valid);
          }
        });
    return counting;
  }

  private static Arrival retraction(Arrival arrival) {
    var of = ((Observed) arrival).assessment();
    return new Observed(
        new Assessment(
            of.id(),
            99,
            Status.RETRACTED,
            of.encounter(),
            of.patient(),
            of.takenAt(),
            of.recordedAt(),
            of.source(),
            of.by(),
            "wrong patient",
            List.of()));
  }
}
