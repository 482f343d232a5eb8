package org.driftward.dashboard.screen.audit;

import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
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

  /**
   * What one figure rests on.
   *
   * @param again whether it is the same as under the figure before
   * @param several whether one of them counts more than once
   * @param left how many more there are
   */
  public record Basis(
      FigureView figure, List<Member> members, boolean again, boolean several, int left) {}

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
    var figures = new ArrayList<Basis>();
    for (int i = 0; i < view.figures().size(); i++) {
      var before = i == 0 ? null : view.figures().get(i - 1);
      figures.add(basis(view.figures().get(i), before, known, now, zone));
    }
    return new MeasureScreen(ward, month, query, callQuery, view, figures);
  }

  /** Such as {@code January 2026}. */
  public String monthName() {
    return MonthRow.fullName(YearMonth.parse(month));
  }

  private static Basis basis(
      FigureView figure,
      @Nullable FigureView before,
      Function<Trace, Known> known,
      Instant now,
      ZoneId zone) {
    var members =
        Stream.concat(
                figure.counted().stream().map(one -> member(true, one, known, now, zone)),
                figure.others().stream().map(one -> member(false, one, known, now, zone)))
            .limit(MOST_LINES)
            .toList();
    int all = figure.counted().size() + figure.others().size();
    return new Basis(
        figure,
        members,
        before != null && figure.sameBasisAs(before),
        figure.several(),
        all - members.size());
  }

  private static Member member(
      boolean counted, Trace trace, Function<Trace, Known> lookup, Instant now, ZoneId zone) {
    var known = lookup.apply(trace);
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
