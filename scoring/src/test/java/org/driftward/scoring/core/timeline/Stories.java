package org.driftward.scoring.core.timeline;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;
import org.jspecify.annotations.Nullable;

/**
 * Everything that may be sent about the encounters of a small ward, in every way that is awkward:
 * equal times, several revisions, retractions, corrected times, two contents under one revision,
 * partial sets, facts that come late, plans that overlap, encounters that merge and part again.
 */
public final class Stories {

  public static final Instant START = Instant.parse("2026-01-05T06:00:00Z");

  private static final List<String> CONSCIOUSNESS = List.of("alert", "confused", "voice", "pain");

  private Stories() {}

  /** What happened; the list is in no particular order. */
  public static Arbitrary<List<Arrival>> any(int most) {
    return Arbitraries.randomValue(random -> story(random, 1 + random.nextInt(most)));
  }

  /** One way in which it may arrive: shuffled, some of it twice. */
  public static List<Arrival> arriving(List<Arrival> story, long seed) {
    var random = new Random(seed);
    var arriving = new ArrayList<>(story);
    for (var arrival : story) {
      if (random.nextInt(4) == 0) {
        arriving.add(arrival);
      }
    }
    Collections.shuffle(arriving, random);
    return arriving;
  }

  /**
   * Without what is void because a merge was undone: only who heard of the merge hears that it is
   * void, and both know the same.
   */
  public static Map<String, Map<String, Snapshot>> own(
      Map<String, Map<String, Snapshot>> known, List<Arrival> story) {
    var own = new TreeMap<String, Map<String, Snapshot>>();
    known.forEach(
        (encounter, snapshots) -> {
          var kept = new TreeMap<>(snapshots);
          kept.values()
              .removeIf(
                  snapshot ->
                      snapshot.withdrawn()
                          && story.stream()
                              .filter(arrival -> is(arrival, snapshot.assessment()))
                              .map(arrival -> ((Observed) arrival).assessment().encounter())
                              .noneMatch(encounter::equals));
          if (!kept.isEmpty()) {
            own.put(encounter, kept);
          }
        });
    return own;
  }

  static boolean is(Arrival arrival, String id) {
    return arrival instanceof Observed observed && observed.assessment().id().equals(id);
  }

  private static List<Arrival> story(Random random, int assessments) {
    var encounters = random.nextInt(3) == 0 ? List.of("V-1", "V-2") : List.of("V-1");
    var story = new ArrayList<Arrival>();
    for (int i = 0; i < assessments; i++) {
      var encounter = encounters.get(random.nextInt(encounters.size()));
      int revisions = random.nextInt(3) == 0 ? 1 + random.nextInt(3) : 1;
      for (int revision = 1; revision <= revisions; revision++) {
        story.add(new Observed(assessment(random, encounter, "A-" + i, revision)));
        if (random.nextInt(20) == 0) {
          story.add(new Observed(assessment(random, encounter, "A-" + i, revision)));
        }
      }
    }
    for (var encounter : encounters) {
      int versions = random.nextInt(4);
      for (int version = 1; version <= versions; version++) {
        story.add(new Told(encounter(random, encounter, version, encounters)));
      }
      int plans = random.nextInt(3);
      for (int version = 1; version <= plans; version++) {
        story.add(new Signed(plan(random, encounter, version)));
      }
    }
    return story;
  }

  static Assessment assessment(Random random, String encounter, String id, int revision) {
    boolean retracted = revision > 1 && random.nextInt(3) == 0;
    return new Assessment(
        id,
        revision,
        retracted ? Status.RETRACTED : revision == 1 ? Status.FINAL : Status.AMENDED,
        encounter,
        "P-1",
        START.plus(Duration.ofMinutes(20L * random.nextInt(100))),
        START,
        Source.BEDSIDE,
        "n-1",
        null,
        findings(random));
  }

  private static List<Finding> findings(Random random) {
    var findings = new ArrayList<Finding>();
    boolean complete = random.nextInt(3) > 0;
    add(findings, complete, random, "respiratory-rate", "/min", 8 + random.nextInt(22));
    add(findings, complete, random, "oxygen-saturation", "%", 84 + random.nextInt(17));
    add(findings, complete, random, "systolic-pressure", "mm[Hg]", 85 + random.nextInt(80));
    add(findings, complete, random, "heart-rate", "/min", 45 + random.nextInt(95));
    if (complete || random.nextBoolean()) {
      var tenths = 350 + random.nextInt(45);
      findings.add(Finding.quantity("temperature", tenths / 10 + "." + tenths % 10, "Cel"));
      findings.add(
          Finding.coded("consciousness", CONSCIOUSNESS.get(Math.max(0, random.nextInt(9) - 5))));
      findings.add(Finding.coded("inspired-oxygen", random.nextInt(3) == 0 ? "oxygen" : "air"));
    }
    return findings;
  }

  private static void add(
      List<Finding> findings,
      boolean complete,
      Random random,
      String code,
      String unit,
      int value) {
    if (complete || findings.isEmpty() || random.nextBoolean()) {
      findings.add(Finding.quantity(code, Integer.toString(value), unit));
    }
  }

  private static Encounter encounter(
      Random random, String id, int version, List<String> encounters) {
    var stays = new ArrayList<Stay>();
    stays.add(new Stay("ward-1", "1", START.minus(Duration.ofHours(1))));
    if (random.nextBoolean()) {
      stays.add(new Stay("ward-2", "4", START.plus(Duration.ofMinutes(20L * random.nextInt(100)))));
    }
    boolean merged = id.equals("V-2") && encounters.size() > 1 && random.nextBoolean();
    return encounter(
        id,
        version,
        random.nextInt(3) == 0 ? null : LocalDate.of(1950 + random.nextInt(60), 3, 1),
        stays,
        merged ? "V-1" : null);
  }

  static Encounter encounter(
      String id,
      int version,
      @Nullable LocalDate birthDate,
      List<Stay> stays,
      @Nullable String mergedInto) {
    return new Encounter(
        id,
        new Patient("P-1", null, birthDate, null),
        stays,
        stays.get(0).from(),
        null,
        mergedInto,
        version);
  }

  private static CarePlan plan(Random random, String encounter, int version) {
    var from = START.plus(Duration.ofMinutes(20L * random.nextInt(100)));
    return new CarePlan(
        encounter,
        version,
        1 + random.nextInt(2),
        List.of(),
        random.nextBoolean() ? Duration.ofHours(1 + random.nextInt(6)) : null,
        null,
        null,
        random.nextInt(6) == 0 ? List.of("pregnant") : List.of(),
        random.nextInt(4) == 0 ? from.minus(Duration.ofHours(random.nextInt(6))) : null,
        random.nextBoolean() ? "chronic lung disease" : "agreed on the round",
        "doctor",
        from,
        from.plus(Duration.ofHours(1 + random.nextInt(20))));
  }
}
