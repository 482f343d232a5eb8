package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.jspecify.annotations.Nullable;

/**
 * Where people say what the codes of foreign systems mean. Answered from the database, so from any
 * process; what is said here holds in every process that plays {@link Role#INGEST} within seconds,
 * and goes before the site's file. Thread-safe; every call may block.
 *
 * <p>An account that does not see every ward sees and maps only codes that it sent itself.
 */
public interface CodeDesk {

  /** What nobody has mapped yet, the most frequent first. */
  List<Seen> unmapped(Sight sight);

  /** What was mapped here and holds now, the latest first. */
  List<Mapped> mapped(Sight sight);

  /**
   * @return empty if no such code ever came in unmapped, or if this account may not see it
   */
  Optional<Opened> open(String id, Sight sight);

  /**
   * Says what a code means. Kept with who and when, like everything that was said before.
   *
   * @return why it was not kept, in words; empty if it was
   */
  Optional<String> map(String id, Meant meant, Sight sight);

  /**
   * From now on the code means nothing again, unless the site's file knows it.
   *
   * @return false if nothing was said here that could be taken back
   */
  boolean takeBack(String id, Sight sight);

  /**
   * Asks for a replay of every held message that carried the code; see {@link IntakeDesk#replay}.
   *
   * @return how many
   */
  int replay(String id, Sight sight);

  /**
   * A code that came in and meant nothing.
   *
   * @param id names it here
   * @param text what its senders call it, as last said, or null
   * @param units that came with it, in the senders' words
   * @param messages how many carried it while it meant nothing
   * @param example the latest refusal that holds it
   */
  record Seen(
      String id,
      ForeignCode code,
      @Nullable String text,
      List<String> units,
      long messages,
      Instant firstAt,
      Instant lastAt,
      String example) {
    public Seen {
      units = List.copyOf(units);
    }
  }

  /**
   * What a code stands for.
   *
   * @param everyFeed whether it holds for every feed, or only for the one that sent it
   * @param finding a code of the catalogue
   * @param site where the code says it, else null
   * @param side where the code says it, else null
   * @param unit the UCUM unit that is meant where the sender names none, or null
   * @param values the sender's answers and the option of the catalogue that each means
   * @param units the sender's words for units and the UCUM unit that each means
   */
  record Meant(
      boolean everyFeed,
      String finding,
      @Nullable String site,
      @Nullable Side side,
      @Nullable String unit,
      Map<String, String> values,
      Map<String, String> units) {
    public Meant {
      Objects.requireNonNull(finding, "finding");
      values = Map.copyOf(values);
      units = Map.copyOf(units);
    }
  }

  /**
   * What somebody said about a code.
   *
   * @param meant null where they took back what was said before
   */
  record Decision(Instant at, String by, @Nullable Meant meant) {}

  /** A code and what was said last. */
  record Mapped(Seen code, Decision decision) {}

  /**
   * One code.
   *
   * @param held how many messages that carried it no replay has brought in whole
   * @param decisions the latest first; empty if nobody ever said anything
   */
  record Opened(Seen code, long held, List<Decision> decisions) {
    public Opened {
      decisions = List.copyOf(decisions);
    }

    /** What was said here and holds now. */
    public Optional<Meant> meant() {
      return decisions.stream().findFirst().map(Decision::meant);
    }
  }
}
