package org.driftward.dashboard.screen.codes;

import java.time.Instant;
import java.util.List;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.CodeDesk.Mapped;
import org.driftward.ingest.contract.CodeDesk.Seen;

/**
 * The codes that came in and mean nothing yet, and those that people have mapped.
 *
 * @param more how many further codes there are, in words, or empty
 */
public record CodesScreen(List<CodeLine> unmapped, String more, List<Known> mapped) {

  /** When these are mapped, the next ones show. */
  private static final int SHOWN = 25;

  /**
   * A code and what was said of it.
   *
   * @param meaning the finding in words
   */
  public record Known(CodeLine code, String meaning, String by, Instant at) {}

  public static CodesScreen of(List<Seen> unmapped, List<Mapped> mapped, Findings findings) {
    int more = Math.max(0, unmapped.size() - SHOWN);
    return new CodesScreen(
        unmapped.stream().limit(SHOWN).map(CodeLine::of).toList(),
        more == 0 ? "" : Wording.count(more, "less frequent code", "less frequent codes"),
        mapped.stream().map(each -> known(each, findings)).toList());
  }

  private static Known known(Mapped mapped, Findings findings) {
    var decision = mapped.decision();
    return new Known(
        CodeLine.of(mapped.code()),
        CodeScreen.words(decision.meant(), findings),
        decision.by(),
        decision.at());
  }
}
