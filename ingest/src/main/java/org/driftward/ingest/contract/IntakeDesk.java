package org.driftward.ingest.contract;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment.Source;
import org.jspecify.annotations.Nullable;

/**
 * What an integration engineer works at: the feeds, what was refused and why, and how it is mended
 * and sent through the same intake again. Answered from the database, so from any process.
 * Thread-safe; every call may block.
 */
public interface IntakeDesk {

  /**
   * Who looks. What was refused may speak about any ward: an account that does not see every ward
   * sees only what it sent itself.
   */
  record Sight(String account, WardScope wards) {}

  /** Every feed that ever brought anything, the latest first. */
  List<Feed> feeds();

  /**
   * One way in, used by one sender.
   *
   * @param origin who sends; see {@link Received#origin()}
   * @param lastAt when it last brought anything
   * @param assessments accepted in the last hour
   * @param moves accepted changes of encounters in the last hour
   * @param refused inputs in the last hour
   * @param recent everything in the last five minutes
   * @param entryLag from taken to recorded, on average over the last hour; null without any
   * @param arrivalLag from recorded to accepted, likewise
   */
  record Feed(
      Source source,
      String origin,
      Instant lastAt,
      long assessments,
      long moves,
      long refused,
      long recent,
      @Nullable Duration entryLag,
      @Nullable Duration arrivalLag) {

    /** Over the last five minutes. */
    public double perMinute() {
      return recent / (double) RECENT.toMinutes();
    }
  }

  /** What {@link Feed#recent()} counts. */
  Duration RECENT = Duration.ofMinutes(5);

  /** The newest files of this account; of every account for one that sees every ward. */
  List<FileImport> imports(Sight sight);

  /**
   * Which refusals; null where it does not matter.
   *
   * @param rule that one of the faults names
   * @param open only those that no replay has brought in whole
   * @param after the id of the last refusal of the page before
   */
  record Filter(
      @Nullable Source source,
      @Nullable String rule,
      @Nullable Instant from,
      @Nullable Instant to,
      boolean open,
      @Nullable String after) {

    public static final Filter OPEN = new Filter(null, null, null, null, true, null);
  }

  /** The newest first. */
  Page refusals(Filter filter, Sight sight);

  /**
   * One page of refusals.
   *
   * @param next for {@link Filter#after()} of the next page, or null on the last
   * @param rules every rule that some refusal of this account's sight breaks
   */
  record Page(List<Line> lines, @Nullable String next, List<String> rules) {
    public Page {
      lines = List.copyOf(lines);
      rules = List.copyOf(rules);
    }
  }

  /** Where a refusal stands. */
  enum State implements Word {
    OPEN,
    WAITING,
    ACCEPTED,
    PARTLY,
    REFUSED
  }

  /**
   * A refusal in a list.
   *
   * @param size in bytes
   * @param state of its latest replay; {@link State#OPEN} without one
   */
  record Line(
      String id,
      Source source,
      String origin,
      String target,
      Instant receivedAt,
      String contentType,
      long size,
      List<Fault> faults,
      State state) {
    public Line {
      faults = List.copyOf(faults);
    }

    @Override
    public String toString() {
      return "Line[" + id + "]";
    }
  }

  /**
   * @return empty if there is none, or if this account may not see it
   */
  Optional<Refusal> refusal(String id, Sight sight);

  /**
   * A refusal with its exact bytes and everything that was tried.
   *
   * @param replays the latest first
   */
  record Refusal(Line line, Bytes bytes, List<Replay> replays) {
    public Refusal {
      replays = List.copyOf(replays);
    }

    @Override
    public String toString() {
      return "Refusal[" + line.id() + "]";
    }
  }

  /**
   * One attempt, as the journal has it.
   *
   * @param by the account that asked for it
   * @param mended the bytes that were sent instead of the original, or null for the original
   * @param doneAt when it was done, or null while it waits
   * @param state {@link State#WAITING} until then
   * @param faults why it, or a part of it, was refused again
   */
  record Replay(
      Instant at,
      String by,
      @Nullable Bytes mended,
      State state,
      @Nullable Instant doneAt,
      List<Fault> faults) {
    public Replay {
      faults = List.copyOf(faults);
    }

    @Override
    public String toString() {
      return "Replay[" + state.word() + "]";
    }
  }

  /**
   * Asks for a replay through the way it came in. It is journalled at once and done by a process
   * that plays {@link Role#INGEST}, with the sight of whoever asks; the original stays as it is.
   *
   * @param mended what to send instead of the original, or null for the original bytes
   * @return false if there is no such refusal in sight, or a replay of it is waiting already
   */
  boolean replay(String refusal, @Nullable Bytes mended, Sight sight);

  /**
   * Asks for a replay of every refusal that the filter finds, beginning after {@link
   * Filter#after()}; those that are waiting or were brought in whole are left out.
   *
   * @return how many
   */
  int replayAll(Filter filter, Sight sight);
}
