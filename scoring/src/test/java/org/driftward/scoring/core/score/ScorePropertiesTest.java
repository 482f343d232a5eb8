package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Score;

/** What holds of every shipped score and of any patient. The rules are ours, not published. */
class ScorePropertiesTest {

  /** Findings that speak of the same thing go missing together. */
  private static final List<Set<String>> TOGETHER =
      List.of(
          Set.of("consciousness", "gcs-eye", "gcs-verbal", "gcs-motor", "gcs-total"),
          Set.of("inspired-oxygen", "oxygen-flow", "inspired-oxygen-fraction"));

  @Property
  void shouldContainTheCompleteScoreInTheBounds(
      @ForAll("subjects") Subject subject, @ForAll long seed, @ForAll("lost") Set<String> lost) {
    var whole = anybody(seed).as(subject);
    var part = whole;
    for (var code : lost) {
      part = part.without(code);
    }
    var complete = whole.scores().stream().collect(Collectors.toMap(Score::id, score -> score));
    for (var score : part.scores()) {
      var settled = complete.get(score.id());
      assertThat(settled.complete()).as(score.id()).isTrue();
      assertThat(score.low()).as(score.id()).isLessThanOrEqualTo(settled.low());
      assertThat(score.high()).as(score.id()).isGreaterThanOrEqualTo(settled.high());
      assertThat(score.single()).as(score.id()).isLessThanOrEqualTo(settled.single());
    }
  }

  @Property
  void shouldNameWhatSettlesTheScore(
      @ForAll("subjects") Subject subject, @ForAll long seed, @ForAll("lost") Set<String> lost) {
    var whole = anybody(seed).as(subject);
    var part = whole;
    for (var code : lost) {
      part = part.without(code);
    }
    for (var score : part.scores()) {
      assertThat(score.complete()).isEqualTo(score.missing().isEmpty());
      assertThat(lost).as(score.id()).containsAll(score.missing());
      if (score.complete()) {
        assertThat(score.low()).isEqualByComparingTo(score.high());
      }
    }
  }

  /** The bounds against trying every combination of everything missing, all rows at once. */
  @Property
  void shouldBeAsTightAsTryingEverything(
      @ForAll("plans") Plan plan, @ForAll("subjects") Subject subject, @ForAll long seed) {
    var random = random(seed);
    var steps = any(plan, random);
    int inputs = steps.length;
    long known = -1L >>> (Long.SIZE - inputs);
    for (int i = 0; i < 3; i++) {
      known &= ~(1L << random.nextInt(inputs));
    }
    boolean max = plan.definition().aggregate() instanceof Aggregate.Max;
    var rows = plan.rows(fitting(plan, subject));
    var brute = new int[] {Integer.MAX_VALUE, Integer.MIN_VALUE};
    tryEverything(plan, rows, steps.clone(), known, 0, max, brute);
    var bounds = Bounds.of(rows, steps, known, plan.atoms(), max);
    assertThat(List.of(bounds.low(), bounds.high())).containsExactly(brute[0], brute[1]);
  }

  /** Raising the points of one input never lowers the total. */
  @Property
  void shouldNeverFallWhenOneInputRises(
      @ForAll("plans") Plan plan, @ForAll("subjects") Subject subject, @ForAll long seed) {
    var random = random(seed);
    boolean max = plan.definition().aggregate() instanceof Aggregate.Max;
    var rows = plan.rows(fitting(plan, subject));
    var before = any(plan, random);
    var after = before.clone();
    int place = random.nextInt(before.length);
    after[place] = pick(plan.atoms()[place], random);
    if (own(rows, place, after) < own(rows, place, before)) {
      var swap = before;
      before = after;
      after = swap;
    }
    assertThat(total(rows, after, max)).isGreaterThanOrEqualTo(total(rows, before, max));
  }

  @Provide
  Arbitrary<Plan> plans() {
    return Arbitraries.of(
        Bedside.BOOK.definitions().stream()
            .filter(definition -> !definition.rows().isEmpty())
            .map(Plan::new)
            .toList());
  }

  @Provide
  Arbitrary<Subject> subjects() {
    return Arbitraries.integers()
        .between(0, 100)
        .flatMap(
            years ->
                Arbitraries.of(
                    new Subject(years, 1, Set.of()),
                    new Subject(years, 2, Set.of()),
                    new Subject(years, 1, Set.of("pregnant"))));
  }

  @Provide
  Arbitrary<Set<String>> lost() {
    return Arbitraries.of(scored().stream().map(CatalogueEntry::code).toList())
        .set()
        .ofMaxSize(8)
        .map(ScorePropertiesTest::together);
  }

  private static Set<String> together(Set<String> codes) {
    var all = new HashSet<>(codes);
    for (var group : TOGETHER) {
      if (group.stream().anyMatch(codes::contains)) {
        all.addAll(group);
      }
    }
    return all;
  }

  /** Everything the scores ask for but volumes, which need a past. */
  private static List<CatalogueEntry> scored() {
    var codes =
        Bedside.BOOK.definitions().stream()
            .flatMap(definition -> definition.inputs().stream())
            .flatMap(input -> input.measure().sources().stream())
            .map(Source::finding)
            .filter(code -> !code.startsWith("urine-output"))
            .collect(Collectors.toSet());
    return Bedside.CATALOGUE.entries().stream()
        .filter(entry -> codes.contains(entry.code()))
        .toList();
  }

  /** A patient with every finding at a random accepted value. */
  private static Bedside anybody(long seed) {
    var random = random(seed);
    var bedside = Bedside.adult();
    for (var entry : scored()) {
      Object value = value(entry, random);
      bedside =
          entry.sites().isEmpty()
              ? bedside.with(entry.code(), value)
              : bedside.at(entry.code(), entry.sites().get(0), Side.LEFT, value);
    }
    return bedside;
  }

  private static Object value(CatalogueEntry entry, RandomGenerator random) {
    if (entry.kind() == Kind.CODED) {
      return entry.options().get(random.nextInt(entry.options().size()));
    }
    int low = entry.accepted().low().intValue();
    int high = entry.accepted().high().intValue();
    if (entry.kind() == Kind.GRADE) {
      return random.nextInt(low, high + 1);
    }
    // Above 0, so that every ratio can be computed.
    return BigDecimal.valueOf(random.nextInt(low * 100 + 100, high * 100 + 1), 2);
  }

  private static void tryEverything(
      Plan plan,
      List<List<Row>> rows,
      long[] steps,
      long known,
      int place,
      boolean max,
      int[] brute) {
    if (place == steps.length) {
      int total = total(rows, steps, max);
      brute[0] = Math.min(brute[0], total);
      brute[1] = Math.max(brute[1], total);
    } else if ((known >>> place & 1) == 1) {
      tryEverything(plan, rows, steps, known, place + 1, max, brute);
    } else {
      for (long atom : plan.atoms()[place]) {
        steps[place] = atom;
        tryEverything(plan, rows, steps, known, place + 1, max, brute);
      }
    }
  }

  private static int total(List<List<Row>> groups, long[] steps, boolean max) {
    var points =
        groups.stream()
            .mapToInt(
                group -> group.stream().mapToInt(row -> row.band(steps).points()).max().orElse(0));
    return max ? points.max().orElse(0) : points.sum();
  }

  private static int own(List<List<Row>> groups, int place, long[] steps) {
    return groups.stream()
        .flatMap(List::stream)
        .filter(row -> row.input().place() == place)
        .mapToInt(row -> row.band(steps).points())
        .sum();
  }

  private static long[] any(Plan plan, RandomGenerator random) {
    var steps = new ArrayList<Long>();
    for (var atoms : plan.atoms()) {
      steps.add(pick(atoms, random));
    }
    return steps.stream().mapToLong(Long::longValue).toArray();
  }

  private static long pick(long[] atoms, RandomGenerator random) {
    return atoms[random.nextInt(atoms.length)];
  }

  /** The subject, at an age that the score is for. */
  private static Subject fitting(Plan plan, Subject subject) {
    var ages = plan.definition().applicability().ages();
    int years = Math.min(Math.max(subject.ageYears(), ages.from()), ages.upto());
    return new Subject(years, subject.oxygenScale(), subject.populations());
  }

  private static RandomGenerator random(long seed) {
    return new SplittableRandom(seed);
  }
}
