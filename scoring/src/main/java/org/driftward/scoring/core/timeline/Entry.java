package org.driftward.scoring.core.timeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/**
 * What scoring keeps of one assessment: when, which revision, and the findings that can be scored.
 * Free words, names and the author are not kept.
 *
 * @param retracted a retracted entry stays, without findings, so that an earlier revision that
 *     arrives late finds it and loses
 * @param findings sorted by key
 * @param movedFrom the encounter that it was recorded under before that one was merged into this
 *     one, or null where it was recorded here
 */
public record Entry(
    Moment moment,
    int revision,
    boolean retracted,
    List<Finding> findings,
    @Nullable String movedFrom) {

  /**
   * Of two revisions of one assessment the greater one counts. The revision number decides. Two
   * records with the same number and different content are a fault of the sender; the rest of the
   * order is arbitrary but total, so that the answer does not depend on which came first, and
   * prefers the retraction, the later time, and what was recorded under this encounter.
   */
  static final Comparator<Entry> PRECEDENCE =
      Comparator.comparingInt(Entry::revision)
          .thenComparing(Entry::retracted)
          .thenComparing(Entry::moment)
          .thenComparing(Entry::findings, Entry::compareFindings)
          .thenComparing(Entry::movedFrom, Comparator.nullsLast(Comparator.<String>naturalOrder()));

  private static final Comparator<Finding> BY_KEY = Comparator.comparing(Finding::key);

  private static final Comparator<Finding> BY_CONTENT =
      Comparator.comparing(Finding::key)
          .thenComparing((Finding finding) -> kind(finding.value()))
          .thenComparing(finding -> finding.value().plain())
          .thenComparing(finding -> unit(finding.value()));

  public Entry {
    Objects.requireNonNull(moment, "moment");
    if (revision < 1) {
      throw new IllegalArgumentException("revision " + revision + " is below 1");
    }
    findings = retracted ? List.of() : sorted(findings);
  }

  public static Entry of(Assessment assessment) {
    var findings = new ArrayList<Finding>(assessment.findings().size());
    for (var finding : assessment.findings()) {
      if (!(finding.value() instanceof FindingValue.Text)) {
        findings.add(finding);
      }
    }
    return new Entry(
        new Moment(assessment.takenAt(), assessment.id()),
        assessment.revision(),
        assessment.retracted(),
        findings,
        null);
  }

  public String id() {
    return moment.assessment();
  }

  /** The same entry as it stands in the encounter that {@code encounter} was merged into. */
  Entry from(String encounter) {
    return new Entry(moment, revision, retracted, findings, encounter);
  }

  boolean supersedes(Entry other) {
    return PRECEDENCE.compare(this, other) > 0;
  }

  @Override
  public String toString() {
    return "Entry[" + id() + " revision " + revision + (retracted ? " retracted]" : "]");
  }

  private static List<Finding> sorted(List<Finding> findings) {
    for (int i = 1; i < findings.size(); i++) {
      if (findings.get(i - 1).key().compareTo(findings.get(i).key()) >= 0) {
        var sorted = new ArrayList<>(findings);
        sorted.sort(BY_KEY);
        return List.copyOf(sorted);
      }
    }
    return List.copyOf(findings);
  }

  private static int compareFindings(List<Finding> one, List<Finding> other) {
    for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
      int difference = BY_CONTENT.compare(one.get(i), other.get(i));
      if (difference != 0) {
        return difference;
      }
    }
    return Integer.compare(one.size(), other.size());
  }

  private static String kind(FindingValue value) {
    return value.getClass().getSimpleName();
  }

  private static String unit(FindingValue value) {
    return value instanceof FindingValue.Quantity quantity ? quantity.unit() : "";
  }
}
