package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/** Drift from the patient's own baseline, trends, and findings that changed for the worse. */
final class SeriesTriggers {

  private final TriggerPolicy policy;
  private final Catalogue catalogue;
  private final Distance distance;
  private final Wording wording;

  SeriesTriggers(TriggerPolicy policy, Catalogue catalogue, Distance distance, Wording wording) {
    this.policy = policy;
    this.catalogue = catalogue;
    this.distance = distance;
    this.wording = wording;
  }

  void gather(Snapshot snapshot, Recent recent, Limits limits, Gathering gathering) {
    snapshot.drift().forEach(drift -> drift(drift, snapshot, recent, limits, gathering));
    snapshot.trend().forEach(trend -> trend(trend, snapshot, gathering));
    changed(snapshot.changed(), limits, gathering);
  }

  private void drift(
      Drift drift, Snapshot snapshot, Recent recent, Limits limits, Gathering gathering) {
    var series = Series.of(drift.code(), drift.site(), drift.side());
    boolean accepted = limits.accept(drift.code(), BigDecimal.valueOf(drift.value()));
    if (drift.worse()) {
      gathering.drifts(series);
    }
    var sustained = policy.drift();
    if (sustained != null && drift.worse()) {
      int sets = 1 + recent.drifting(series);
      if (sets >= sustained.sets()) {
        var words = wording.drift(drift, sets, snapshot.asOf());
        var degrees = Map.of(drift.drift() < 0 ? "below" : "above", Math.abs(drift.drift()));
        fire("drift-" + series, sustained.level(), degrees, words, accepted, gathering);
      } else if (!accepted) {
        gathering.mayReach("drift-" + series, sustained.level());
      }
    }
    var sum = policy.accumulated();
    if (sum != null && Math.abs(drift.accumulated()) >= sum.limit() && forTheWorse(drift)) {
      var words = wording.accumulated(drift, sum.limit(), snapshot.asOf());
      var degrees =
          Map.of(
              drift.accumulated() < 0 ? "below" : "above",
              Math.abs(drift.accumulated()) / sum.limit());
      fire("accumulated-" + series, sum.level(), degrees, words, accepted, gathering);
    }
  }

  private static void fire(
      String rule,
      Level level,
      Map<String, Double> degrees,
      String words,
      boolean accepted,
      Gathering gathering) {
    if (accepted) {
      gathering.suppress(rule, level, degrees, words);
    } else {
      gathering.fire(rule, level, degrees, words);
    }
  }

  /**
   * Where either way is worse, both count, but not the way back: from outside the range of a well
   * adult towards it. A saturation that creeps up does not count.
   */
  private boolean forTheWorse(Drift drift) {
    return catalogue
        .find(drift.code())
        .map(
            entry ->
                switch (entry.worse()) {
                  case HIGHER -> drift.accumulated() > 0;
                  case LOWER -> drift.accumulated() < 0;
                  case EITHER -> !recovers(entry.expected(), drift);
                  case NONE -> false;
                })
        .orElse(true);
  }

  private static boolean recovers(CatalogueEntry.@Nullable Range expected, Drift drift) {
    if (expected == null) {
      return false;
    }
    double low = expected.low().doubleValue();
    double high = expected.high().doubleValue();
    boolean fromAbove = drift.baseline() > high && drift.accumulated() < 0;
    boolean fromBelow = drift.baseline() < low && drift.accumulated() > 0;
    return (fromAbove && drift.value() >= low) || (fromBelow && drift.value() <= high);
  }

  private void trend(Trend trend, Snapshot snapshot, Gathering gathering) {
    var rule = policy.trend();
    var crossing = trend.projectedCrossing();
    if (rule == null || !trend.significant() || crossing == null || !forTheWorse(trend)) {
      return;
    }
    if (!crossing.isAfter(snapshot.asOf().plus(rule.horizon()))) {
      var series = Series.of(trend.code(), trend.site(), trend.side());
      gathering.fire("trend-" + series, rule.level(), Map.of(), wording.trend(trend, snapshot));
    }
  }

  /**
   * A trend back to normal crosses thresholds too. Where either way is worse, the threshold must
   * lie outside the range of a well adult; a score gets worse upwards.
   */
  private boolean forTheWorse(Trend trend) {
    Optional<CatalogueEntry> found = catalogue.find(trend.code());
    if (found.isEmpty()) {
      return trend.perHour() > 0;
    }
    var entry = found.get();
    return switch (entry.worse()) {
      case HIGHER -> trend.perHour() > 0;
      case LOWER -> trend.perHour() < 0;
      case NONE -> false;
      case EITHER -> leavesExpected(entry, trend);
    };
  }

  private static boolean leavesExpected(CatalogueEntry entry, Trend trend) {
    var expected = entry.expected();
    @Nullable Double threshold = trend.threshold();
    if (expected == null || threshold == null) {
      return true;
    }
    return trend.perHour() > 0
        ? threshold >= expected.high().doubleValue()
        : threshold <= expected.low().doubleValue();
  }

  private void changed(List<ChangedFinding> findings, Limits limits, Gathering gathering) {
    Map<Group, List<ChangedFinding>> open = new EnumMap<>(Group.class);
    Map<Group, List<ChangedFinding>> accepted = new EnumMap<>(Group.class);
    for (var finding : findings) {
      var side = limits.accept(finding.code(), finding.to()) ? accepted : open;
      side.computeIfAbsent(finding.group(), group -> new ArrayList<>()).add(finding);
    }
    policy
        .changed()
        .forEach(
            (group, level) -> {
              var rule = "changed-" + group.word();
              var found = open.get(group);
              var quiet = accepted.get(group);
              if (found != null) {
                gathering.fire(rule, level, degrees(found), wording.changed(group, found));
              } else if (quiet != null) {
                gathering.suppress(rule, level, degrees(quiet), wording.changed(group, quiet));
              }
            });
  }

  /** Each finding by itself, so that the other side is something more. */
  private Map<String, Double> degrees(List<ChangedFinding> findings) {
    return findings.stream()
        .collect(
            Collectors.toMap(
                finding -> Series.of(finding.code(), finding.site(), finding.side()),
                finding -> distance.between(finding.code(), finding.from(), finding.to()),
                Math::max));
  }
}
