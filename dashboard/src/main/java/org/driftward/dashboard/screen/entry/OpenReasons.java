package org.driftward.dashboard.screen.entry;

import java.util.List;
import org.driftward.alerts.contract.Reason;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.contract.ChangedFinding;
import org.jspecify.annotations.Nullable;

/**
 * What somebody is concerned about now: nobody should call it as usual without looking.
 *
 * @param changed findings that changed for the worse
 * @param rules of the running episode
 */
record OpenReasons(List<ChangedFinding> changed, List<String> rules) {

  static OpenReasons of(@Nullable StayRecord record) {
    if (record == null) {
      return new OpenReasons(List.of(), List.of());
    }
    var snapshot = record.view().snapshot();
    var episode = record.view().episode();
    return new OpenReasons(
        snapshot == null ? List.of() : snapshot.changed(),
        episode == null ? List.of() : episode.reasons().stream().map(Reason::rule).toList());
  }

  /** Rules name what met them: {@code single-heart-rate}, {@code changed-limb-circulation}. */
  boolean concern(CatalogueEntry entry, FindingKey key) {
    var group = entry.group() == null ? null : "changed-" + entry.group().word();
    return changed.stream().anyMatch(finding -> key.equals(key(finding)))
        || rules.stream().anyMatch(rule -> rule.equals(group) || names(rule, entry.code()));
  }

  private static boolean names(String rule, String code) {
    return rule.endsWith("-" + code) || rule.contains("-" + code + "-");
  }

  private static FindingKey key(ChangedFinding finding) {
    return new FindingKey(finding.code(), finding.site(), finding.side());
  }
}
