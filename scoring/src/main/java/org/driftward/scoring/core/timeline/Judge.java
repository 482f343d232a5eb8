package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.Picture;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.ChangeDetector;
import org.driftward.scoring.core.plan.ObservationPlan;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.core.score.Subject;
import org.driftward.scoring.core.score.Thresholds;
import org.driftward.scoring.core.urgent.UrgentFindings;
import org.jspecify.annotations.Nullable;

/**
 * What one policy and one set of score definitions make of a moment, given everything before it.
 * Stateless and thread-safe.
 */
public final class Judge {

  private final ScoreBook book;
  private final ScoringPolicy policy;
  private final ObservationPlan plan;
  private final Weaver weaver;
  private final Totals totals;
  private final Sums sums;
  private final UrgentFindings urgent;

  public Judge(Catalogue catalogue, ScoreBook book, ScoringPolicy policy) {
    this.book = Objects.requireNonNull(book, "book");
    this.policy = Objects.requireNonNull(policy, "policy");
    this.plan = new ObservationPlan(policy.observations());
    var detector = new ChangeDetector(catalogue, policy);
    var thresholds = new Thresholds(book);
    this.weaver = new Weaver(policy, detector, thresholds);
    this.totals = new Totals(detector, weaver, thresholds);
    this.sums = new Sums(book, policy);
    this.urgent = new UrgentFindings(catalogue, policy.urgent());
  }

  /** Of the policy; stands in every snapshot. */
  String version() {
    return policy.version();
  }

  /**
   * @param snapshot not yet stamped for sending
   */
  record Step(Head head, Snapshot snapshot) {}

  /** Takes in the next assessment. */
  Step step(String encounter, Head before, Entry entry, Facts facts) {
    var asOf = entry.moment().takenAt();
    var carePlan = facts.planAt(asOf).orElse(null);
    var subject = subject(facts, asOf);
    var taken = readings(entry);
    var strands = weaver.next(before, taken, facts, subject, asOf);
    var past = sums.next(before.sums(), taken, asOf);
    var scores =
        book.score(
            new Picture(asOf, newest(strands)), subject, policy::validity, sums.history(past));
    var counted = totals.next(before.totals(), scores, entry);
    var set = plan.setIn(codes(entry), sameLook(strands, asOf), asOf).orElse(before.newestSet());
    var head = new Head(entry.moment(), before.sets() + 1, strands, counted.strands(), past, set);
    return new Step(head, snapshot(encounter, head, counted.scores(), carePlan, subject));
  }

  /** What the state of a stored strand says, as this judge said it when the reading was new. */
  Strand revived(Strand bare, Facts facts) {
    var takenAt = bare.newest().takenAt();
    var subject = subject(facts, takenAt);
    return weaver.revived(bare, subject);
  }

  /** Likewise, of the totals of a score. */
  Strand revivedTotal(Strand bare) {
    return totals.revived(bare);
  }

  /** What is said of an assessment that counts no more. */
  Snapshot withdrawn(String encounter, Entry entry) {
    return new Snapshot(
        encounter,
        entry.moment().takenAt(),
        entry.id(),
        0,
        false,
        true,
        policy.version(),
        0,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        null,
        null,
        null,
        null);
  }

  private Snapshot snapshot(
      String encounter,
      Head head,
      List<Score> scores,
      @Nullable CarePlan carePlan,
      Subject subject) {
    var at = Objects.requireNonNull(head.at());
    var set = head.newestSet();
    var serving = serving(head, scores, at.takenAt());
    var calling = urgent.among(readings(serving), subject);
    var next = set == null ? null : plan.next(set, scores, calling, at.takenAt(), carePlan);
    return new Snapshot(
        encounter,
        at.takenAt(),
        at.assessment(),
        0,
        false,
        false,
        policy.version(),
        carePlan == null ? 0 : carePlan.version(),
        scores,
        said(serving, Strand::drift),
        said(serving, Strand::trend),
        said(serving, Strand::changed),
        calling,
        set == null ? null : set.takenAt(),
        set == null ? List.of() : set.partial(),
        next == null ? null : next.due(),
        next == null ? null : next.interval(),
        next == null ? null : next.why(),
        null);
  }

  /** The leading score's totals, then every series whose newest value still serves. */
  private List<Strand> serving(Head head, List<Score> scores, Instant asOf) {
    var serving = new ArrayList<Strand>(head.strands().size() + 1);
    var leading = scores.isEmpty() ? null : head.totals().get(scores.get(0).id());
    if (leading != null) {
      serving.add(leading);
    }
    for (var strand : head.strands().values()) {
      var until = strand.newest().takenAt().plus(policy.validity(strand.newest().code()));
      if (!until.isBefore(asOf)) {
        serving.add(strand);
      }
    }
    return serving;
  }

  private static <T> List<T> said(
      List<Strand> strands, Function<Strand, ? extends @Nullable T> what) {
    var said = new ArrayList<T>();
    for (var strand : strands) {
      var words = what.apply(strand);
      if (words != null) {
        said.add(words);
      }
    }
    return said;
  }

  /** Completed years in UTC: a birthday may count some hours early or late. */
  private static Subject subject(Facts facts, Instant asOf) {
    var birthDate = facts.birthDate();
    Integer years = null;
    if (birthDate != null) {
      int age = Period.between(birthDate, asOf.atZone(ZoneOffset.UTC).toLocalDate()).getYears();
      years = age < 0 ? null : Integer.valueOf(age);
    }
    var standing = facts.standingAt(asOf);
    return new Subject(
        years,
        standing.oxygenScale(),
        Set.copyOf(standing.populations()),
        standing.usualConsciousness());
  }

  private static Iterable<Reading> readings(List<Strand> strands) {
    return () -> strands.stream().map(Strand::newest).iterator();
  }

  private static List<Reading> readings(Entry entry) {
    var moment = entry.moment();
    var readings = new ArrayList<Reading>(entry.findings().size());
    for (var finding : entry.findings()) {
      readings.add(
          new Reading(finding.key(), finding.value(), moment.takenAt(), moment.assessment()));
    }
    return readings;
  }

  /** Whether something was taken so shortly before that it is one look at the patient. */
  private Predicate<String> sameLook(SortedMap<FindingKey, Strand> strands, Instant asOf) {
    var earliest = asOf.minus(policy.spacing());
    return code -> {
      for (var strand : strands.tailMap(FindingKey.of(code)).values()) {
        if (!strand.newest().code().equals(code)) {
          return false;
        }
        if (strand.newest().takenAt().isAfter(earliest)) {
          return true;
        }
      }
      return false;
    };
  }

  private static List<String> codes(Entry entry) {
    var codes = new ArrayList<String>(entry.findings().size());
    for (var finding : entry.findings()) {
      codes.add(finding.code());
    }
    return codes;
  }

  private static SortedMap<FindingKey, Reading> newest(SortedMap<FindingKey, Strand> strands) {
    var newest = new TreeMap<FindingKey, Reading>();
    strands.forEach((key, strand) -> newest.put(key, strand.newest()));
    return newest;
  }
}
