package org.driftward.dashboard.screen.codes;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeDesk.Decision;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.CodeDesk.Opened;
import org.jspecify.annotations.Nullable;

/**
 * One code of a feed, a form to say what it means, and what was said before.
 *
 * @param holds what it means now, in words, or empty
 * @param held how many messages wait for it
 * @param heldWords the same in words
 * @param regions the catalogue to choose from, in the order of the examination
 * @param form of the finding that is chosen, or null before one is
 * @param everyFeed whether this person may speak for every feed
 */
public record CodeScreen(
    CodeLine line,
    String holds,
    long held,
    String heldWords,
    List<Region> regions,
    @Nullable MeaningForm form,
    boolean everyFeed,
    List<Said> said) {

  /** The findings of one region. */
  public record Region(String title, List<Choice> findings) {}

  /** One of several. */
  public record Choice(String value, String words, boolean chosen) {}

  /** What somebody decided, in words. */
  public record Said(Instant at, String by, String words) {}

  /**
   * @param chosen a finding of the catalogue, or null for what the code means now
   */
  public static CodeScreen of(
      Opened opened, @Nullable String chosen, Catalogue catalogue, boolean everyFeed) {
    var findings = new Findings(catalogue);
    var meant = opened.meant().orElse(null);
    var finding = chosen != null || meant == null ? chosen : meant.finding();
    return new CodeScreen(
        CodeLine.of(opened.code()),
        meant == null ? "" : words(meant, findings),
        opened.held(),
        Wording.count(opened.held(), "held message", "held messages"),
        regions(catalogue, finding),
        finding == null
            ? null
            : catalogue
                .find(finding)
                .map(entry -> MeaningForm.of(entry, opened.code(), meant))
                .orElse(null),
        everyFeed,
        opened.decisions().stream().map(decision -> said(decision, findings)).toList());
  }

  private static List<Region> regions(Catalogue catalogue, @Nullable String chosen) {
    Map<String, List<Choice>> byRegion = new LinkedHashMap<>();
    for (var entry : catalogue.entries()) {
      byRegion
          .computeIfAbsent(entry.region(), it -> new ArrayList<>())
          .add(new Choice(entry.code(), entry.name(), entry.code().equals(chosen)));
    }
    var regions = new ArrayList<Region>();
    byRegion.forEach((id, choices) -> regions.add(new Region(Wording.sentence(id), choices)));
    return regions;
  }

  private static Said said(Decision decision, Findings findings) {
    var meant = decision.meant();
    return new Said(
        decision.at(),
        decision.by(),
        meant == null ? "took it back" : "said it means " + words(meant, findings));
  }

  /** {@code Heart rate, for every feed}. */
  static String words(@Nullable Meant meant, Findings findings) {
    return meant == null
        ? ""
        : findings.name(meant.finding(), meant.site(), meant.side())
            + (meant.everyFeed() ? ", for every feed" : "");
  }
}
