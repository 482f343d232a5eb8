package org.driftward.dashboard.screen.audit;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.dashboard.screen.Wording;
import org.jspecify.annotations.Nullable;

/**
 * One measure with everything that its figures rest on.
 *
 * @param ward or null for all
 * @param month such as {@code 2026-01}
 * @param query of a page about the same ward and month
 * @param callQuery of a call about the same ward and month
 */
public record MeasureScreen(
    @Nullable String ward,
    String month,
    String query,
    String callQuery,
    MeasureView measure,
    List<Basis> figures) {

  /** As many lines under one figure as a person reads; the whole list is in the JSON. */
  private static final int MOST_LINES = 200;

  /** What one figure rests on. */
  public record Basis(FigureView figure, List<Member> members, int left) {}

  /**
   * One of those that were counted, or only looked at.
   *
   * @param counted whether it is in the numerator
   * @param where ward and bed, or empty
   * @param when it began or happened, or empty
   * @param what it is, in words
   */
  public record Member(
      boolean counted, @Nullable String path, String id, String where, String when, String what) {}

  /**
   * What the house knows of it.
   *
   * @param ward or null where it is not known any more
   */
  public record Known(
      @Nullable String ward, @Nullable String bed, @Nullable Instant at, String what) {}

  public static MeasureScreen of(
      @Nullable String ward,
      String month,
      String query,
      String callQuery,
      Measure measure,
      Function<Trace, Known> known,
      Instant now,
      ZoneId zone) {
    var view = MeasureView.of(measure);
    return new MeasureScreen(
        ward,
        month,
        query,
        callQuery,
        view,
        view.figures().stream().map(figure -> basis(figure, known, now, zone)).toList());
  }

  private static Basis basis(
      FigureView figure, Function<Trace, Known> known, Instant now, ZoneId zone) {
    var members = new ArrayList<Member>();
    int all = figure.counted().size() + figure.others().size();
    for (var trace : figure.counted()) {
      if (members.size() < MOST_LINES) {
        members.add(member(true, trace, known.apply(trace), now, zone));
      }
    }
    for (var trace : figure.others()) {
      if (members.size() < MOST_LINES) {
        members.add(member(false, trace, known.apply(trace), now, zone));
      }
    }
    return new Basis(figure, members, all - members.size());
  }

  private static Member member(
      boolean counted, Trace trace, Known known, Instant now, ZoneId zone) {
    var ward = known.ward() == null ? "" : known.ward();
    return new Member(
        counted,
        trace.path(),
        trace.id(),
        known.bed() == null ? ward : ward + ", bed " + known.bed(),
        known.at() == null ? "" : Wording.time(known.at(), now, zone),
        known.what());
  }
}
