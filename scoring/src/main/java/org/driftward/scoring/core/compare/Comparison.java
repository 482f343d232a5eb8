package org.driftward.scoring.core.compare;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Function;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/**
 * Compares two snapshots of one moment. The names of the versions that made them are no difference:
 * another policy that says the same says nothing new.
 */
public final class Comparison {

  private static final int DIGITS = 2;

  private Comparison() {}

  /** Every difference, in the order leading score, scores, drift, trend, changed findings, due. */
  public static List<Difference> of(Snapshot before, Snapshot after) {
    var found = new ArrayList<Difference>();
    add(found, before, "leading", leading(before), leading(after));
    compare(found, before, "score", scores(before), scores(after));
    compare(
        found,
        before,
        "drift",
        said(before.drift(), d -> series(d.code(), d.site(), d.side()), Comparison::words),
        said(after.drift(), d -> series(d.code(), d.site(), d.side()), Comparison::words));
    compare(
        found,
        before,
        "trend",
        said(before.trend(), t -> series(t.code(), t.site(), t.side()), Comparison::words),
        said(after.trend(), t -> series(t.code(), t.site(), t.side()), Comparison::words));
    compare(
        found,
        before,
        "changed",
        said(before.changed(), c -> series(c.code(), c.site(), c.side()), c -> c.words()),
        said(after.changed(), c -> series(c.code(), c.site(), c.side()), c -> c.words()));
    add(found, before, "due", due(before), due(after));
    return found;
  }

  private static void compare(
      List<Difference> found,
      Snapshot moment,
      String kind,
      Map<String, String> before,
      Map<String, String> after) {
    var codes = new TreeSet<>(before.keySet());
    codes.addAll(after.keySet());
    codes.forEach(code -> add(found, moment, kind + ":" + code, before.get(code), after.get(code)));
  }

  private static void add(
      List<Difference> found,
      Snapshot moment,
      String what,
      @Nullable String before,
      @Nullable String after) {
    if (!Objects.equals(before, after)) {
      found.add(
          new Difference(
              moment.encounter(), moment.assessment(), moment.asOf(), what, before, after));
    }
  }

  private static <T> Map<String, String> said(
      Collection<T> all, Function<T, String> series, Function<T, String> words) {
    var said = new LinkedHashMap<String, String>();
    all.forEach(one -> said.put(series.apply(one), words.apply(one)));
    return said;
  }

  private static Map<String, String> scores(Snapshot snapshot) {
    return said(snapshot.scores(), Score::id, Comparison::words);
  }

  private static @Nullable String leading(Snapshot snapshot) {
    var leading = snapshot.leading();
    return leading == null ? null : leading.id();
  }

  private static String words(Score score) {
    var total =
        score.complete()
            ? score.low().toPlainString()
            : score.low().toPlainString() + " to " + score.high().toPlainString();
    var risk =
        score.risk().equals(score.riskIfWorst())
            ? score.risk()
            : score.risk() + " to " + score.riskIfWorst();
    var usual = score.usual() == null ? "" : ", usually " + score.usual().toPlainString();
    var missing = score.missing().isEmpty() ? "" : ", missing " + score.missing();
    return total + ", " + risk + usual + missing;
  }

  private static String words(Drift drift) {
    return Plain.number(drift.drift(), DIGITS)
        + " spreads of "
        + Plain.number(drift.spread(), DIGITS)
        + " from "
        + Plain.number(drift.baseline(), DIGITS)
        + ", added up "
        + Plain.number(drift.accumulated(), DIGITS)
        + (drift.worse() ? ", worse" : "");
  }

  private static String words(Trend trend) {
    return (trend.perHour() < 0 ? "-" : "")
        + Plain.rate(trend.perHour())
        + " per hour over "
        + trend.sets()
        + " values"
        + (trend.significant() ? ", significant" : "")
        + (trend.projectedCrossing() == null ? "" : ", crossing " + trend.projectedCrossing());
  }

  private static @Nullable String due(Snapshot snapshot) {
    return snapshot.nextDue() == null ? null : snapshot.nextDue().toString();
  }

  private static String series(String code, @Nullable String site, @Nullable Side side) {
    return code + (site == null ? "" : " " + site) + (side == null ? "" : " " + side.word());
  }
}
