package org.driftward.dashboard.screen.codes;

import java.time.Instant;
import java.util.Objects;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.CodeDesk.Seen;

/**
 * A code of a feed in words.
 *
 * @param system as the feed names it, or empty
 * @param name what the feed calls it, or empty
 * @param units that came with it, or empty
 * @param messages how many carried it
 * @param example the refusal that shows it
 */
public record CodeLine(
    String id,
    String code,
    String system,
    String feed,
    String name,
    String units,
    String messages,
    Instant first,
    Instant last,
    String example) {

  static CodeLine of(Seen seen) {
    var code = seen.code();
    return new CodeLine(
        seen.id(),
        code.code(),
        code.system(),
        code.source(),
        Objects.requireNonNullElse(seen.text(), ""),
        String.join(", ", seen.units()),
        Wording.count(seen.messages(), "message", "messages"),
        seen.firstAt(),
        seen.lastAt(),
        seen.example());
  }
}
