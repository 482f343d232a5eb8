package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.policy.Ladder;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * One episode with everything needed to decide what happens to it next; the contract's {@link
 * Episode} is what others see of it.
 *
 * @param version counts the changes from 1
 * @param settled version of the last change of state, owner or level; a person who saw this version
 *     or a later one has seen what matters
 * @param level of the gravest concern; of the last one when closed
 * @param alarmed when the present alarm went out, wall clock
 * @param answered how bad each rule was found by the newest set when somebody answered last: came,
 *     said to come, or let it rest
 * @param openedAt clinical time of the first trigger
 */
public record Case(
    String id,
    long version,
    long settled,
    Level level,
    List<Concern> concerns,
    Standing standing,
    Instant alarmed,
    Map<String, Severity> answered,
    Instant openedAt,
    @Nullable Instant acknowledgedAt,
    @Nullable Instant attendedAt,
    @Nullable Instant closedAt,
    @Nullable String closedBecause) {

  public Case {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(standing, "standing");
    Objects.requireNonNull(alarmed, "alarmed");
    Objects.requireNonNull(openedAt, "openedAt");
    concerns = List.copyOf(concerns);
    answered = Map.copyOf(answered);
  }

  static Case opened(
      String id, List<Concern> concerns, Standing standing, Instant openedAt, Instant now) {
    var level = Concerns.level(concerns).orElseThrow();
    var answered = standing.owner() == null ? Map.<String, Severity>of() : Concerns.seen(concerns);
    return new Case(
        id, 1, 1, level, concerns, standing, now, answered, openedAt, null, null, null, null);
  }

  EpisodeState state() {
    return standing.state();
  }

  boolean isOver() {
    return state() == EpisodeState.CLOSED;
  }

  List<Reason> reasons() {
    return concerns.stream().map(Concern::reason).toList();
  }

  Case withConcerns(List<Concern> other) {
    var higher = Concerns.level(other).orElse(level);
    return new Case(
        id,
        version,
        settled,
        higher,
        other,
        standing,
        alarmed,
        answered,
        openedAt,
        acknowledgedAt,
        attendedAt,
        closedAt,
        closedBecause);
  }

  /** Comes to stand elsewhere, and keeps the times that go with it. */
  Case movedTo(Standing next) {
    var first = next.since();
    // Handing over, or a longer time for the next set, is no new answer.
    boolean news = state() != next.state() || !next.since().equals(standing.since());
    boolean acknowledges = next.state() == EpisodeState.ACKNOWLEDGED;
    boolean attends = next.state() == EpisodeState.ATTENDED && news;
    boolean answers = acknowledges || attends || next.state() == EpisodeState.HELD;
    return new Case(
        id,
        version,
        settled,
        level,
        concerns,
        next,
        alarmed,
        answers && news ? Concerns.seen(concerns) : answered,
        openedAt,
        acknowledgedAt == null && (acknowledges || attends) ? first : acknowledgedAt,
        attendedAt == null && attends ? first : attendedAt,
        closedAt,
        closedBecause);
  }

  Case alarmedAt(Instant now) {
    return new Case(
        id,
        version,
        settled,
        level,
        concerns,
        standing,
        now,
        answered,
        openedAt,
        acknowledgedAt,
        attendedAt,
        closedAt,
        closedBecause);
  }

  Case closed(Instant now, String because) {
    var over = new Standing(EpisodeState.CLOSED, null, standing.rung(), null, now);
    return new Case(
        id,
        version,
        settled,
        level,
        concerns,
        over,
        alarmed,
        answered,
        openedAt,
        acknowledgedAt,
        attendedAt,
        now,
        because);
  }

  /** The same as the next version after {@code before}. */
  Case after(Case before) {
    boolean matters =
        state() != before.state()
            || level != before.level
            || standing.rung() != before.standing.rung()
            || !Objects.equals(standing.owner(), before.standing.owner());
    long next = before.version + 1;
    return new Case(
        id,
        next,
        matters ? next : before.settled,
        level,
        concerns,
        standing,
        alarmed,
        answered,
        openedAt,
        acknowledgedAt,
        attendedAt,
        closedAt,
        closedBecause);
  }

  /** The same, as if what an assessment showed had never been answered. */
  Case unanswered(String assessment) {
    var others = new HashMap<>(answered);
    concerns.stream()
        .filter(concern -> concern.restsOn(assessment))
        .forEach(concern -> others.remove(concern.rule()));
    return new Case(
        id,
        version,
        settled,
        level,
        concerns,
        standing,
        alarmed,
        others,
        openedAt,
        acknowledgedAt,
        attendedAt,
        closedAt,
        closedBecause);
  }

  /** Whether it stands among the concerns already, and as bad. */
  boolean knows(Concern concern) {
    return concern.seen() == null
        || !concern.seen().worseThan(Concerns.seen(concerns).get(concern.rule()));
  }

  /**
   * Whether the concern is worse than whoever answered has seen. Courses of before kept nothing of
   * an acknowledgement: then it answered what stands.
   */
  boolean isNews(Concern concern) {
    var seen = concern.seen();
    var known = answered.isEmpty() && standing.owner() != null ? Concerns.seen(concerns) : answered;
    return seen != null && seen.worseThan(known.get(concern.rule()));
  }

  Episode episode(String encounter, Place place, Ladder ladder) {
    var owner = standing.owner();
    return new Episode(
        id,
        version,
        encounter,
        place.ward(),
        place.bed(),
        state(),
        level,
        owner == null ? null : owner.account(),
        owner == null ? null : owner.name(),
        openedAt,
        standing.due(),
        standing.awaiting(),
        standing.rung(),
        ladder.of(level).rung(standing.rung()).words(),
        reasons(),
        acknowledgedAt,
        attendedAt,
        closedAt,
        closedBecause);
  }
}
