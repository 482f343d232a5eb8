package org.driftward.dashboard.screen;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.scoring.contract.ChangedFinding;
import org.jspecify.annotations.Nullable;

/** Changed findings that speak about one body function. */
public record ChangeGroup(String title, List<Change> changes) {

  /**
   * @param words what changed, as a person would say it
   * @param values from the usual value to the newest
   */
  public record Change(String words, String values, Countdown since) {}

  /** In the order of the functions; a function without a change is left out. */
  static List<ChangeGroup> of(List<ChangedFinding> changed, Findings findings) {
    var groups = new EnumMap<Group, List<Change>>(Group.class);
    for (ChangedFinding finding : changed) {
      groups
          .computeIfAbsent(finding.group(), group -> new ArrayList<>())
          .add(change(finding, findings.unit(finding.code())));
    }
    return groups.entrySet().stream()
        .map(entry -> new ChangeGroup(Wording.sentence(entry.getKey().word()), entry.getValue()))
        .toList();
  }

  private static Change change(ChangedFinding finding, @Nullable String unit) {
    return new Change(
        finding.words(),
        Wording.value(finding.from(), unit) + " → " + Wording.value(finding.to(), unit),
        Countdown.since(finding.since(), "changed for"));
  }
}
