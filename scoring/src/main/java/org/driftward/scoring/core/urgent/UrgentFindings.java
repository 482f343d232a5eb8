package org.driftward.scoring.core.urgent;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.scoring.contract.UrgentFinding;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.UrgentValue;
import org.driftward.scoring.core.score.Subject;
import org.jspecify.annotations.Nullable;

/**
 * Finds the values that call somebody by themselves: by the catalogue's {@code call-now} and by the
 * policy's life-threatening values. Immutable, thread-safe.
 */
public final class UrgentFindings {

  private static final Comparator<UrgentFinding> GRAVEST_FIRST =
      Comparator.comparing(UrgentFinding::level)
          .thenComparingDouble(UrgentFinding::beyond)
          .reversed()
          .thenComparing(UrgentFinding::code)
          .thenComparing(UrgentFinding::site, Comparator.nullsFirst(Comparator.naturalOrder()))
          .thenComparing(UrgentFinding::side, Comparator.nullsFirst(Comparator.naturalOrder()));

  /** By code; most findings have none. */
  private final Map<String, List<UrgentRule>> rules = new HashMap<>();

  /**
   * @throws IllegalArgumentException naming a value of a finding that the catalogue does not have
   */
  public UrgentFindings(Catalogue catalogue, List<UrgentValue> values) {
    for (var entry : catalogue.entries()) {
      entry.callNow().forEach(when -> add(UrgentRule.of(entry, when)));
    }
    for (var value : values) {
      add(UrgentRule.of(entry(catalogue, value.code()), value));
    }
  }

  /**
   * Those among the newest readings, gravest first; of several rules of one reading the gravest.
   */
  public List<UrgentFinding> among(Iterable<Reading> newest, Subject subject) {
    var found = new ArrayList<UrgentFinding>();
    for (var reading : newest) {
      @Nullable UrgentFinding gravest = null;
      for (var rule : rules.getOrDefault(reading.code(), List.of())) {
        var met = rule.metBy(reading, subject);
        if (met != null && (gravest == null || GRAVEST_FIRST.compare(met, gravest) < 0)) {
          gravest = met;
        }
      }
      if (gravest != null) {
        found.add(gravest);
      }
    }
    if (found.size() > 1) {
      found.sort(GRAVEST_FIRST);
    }
    return Collections.unmodifiableList(found);
  }

  private void add(UrgentRule rule) {
    rules.computeIfAbsent(rule.entry().code(), code -> new ArrayList<>()).add(rule);
  }

  private static CatalogueEntry entry(Catalogue catalogue, String code) {
    return catalogue
        .find(code)
        .orElseThrow(() -> new IllegalArgumentException("urgent: no finding " + code));
  }
}
