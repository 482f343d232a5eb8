package org.driftward.scoring.core.change;

import org.driftward.scoring.core.change.Forming.Waiting;

/**
 * The compact form of a {@link SeriesState}. Lossless: decoding gives exactly the encoded state, so
 * that it makes no difference where a state has been kept in between.
 *
 * <p>Three bytes lead: form, which parts follow, and how many decimals the values have. Times are
 * counted in minutes where all are whole minutes, else in seconds or milliseconds; times and values
 * are written as differences from the one before. A typical vital sign takes two bytes for a time
 * and one for a value.
 */
final class StateCode {

  private static final byte FORM = 1;
  private static final int SETTLED = 1;
  private static final int WAITING = 1 << 1;
  private static final int COUNTED = 1 << 2;
  private static final int CHANGED = 1 << 3;
  private static final int SUMS = 1 << 4;
  private static final int UNIT_SHIFT = 5;
  private static final long[] UNITS = {60_000, 1_000, 1};

  private StateCode() {}

  static byte[] encode(SeriesState state) {
    int unit = unit(state);
    int decimals = decimals(state);
    var out = new PackedWriter(UNITS[unit], decimals);
    out.octet(FORM);
    out.octet(parts(state) | (unit << UNIT_SHIFT));
    out.octet(decimals);
    var window = state.window();
    out.count(window.size());
    for (int i = 0; i < window.size(); i++) {
      out.time(window.time(i));
      out.value(window.value(i));
    }
    if (state.counted() != SeriesState.NEVER) {
      out.time(state.counted());
    }
    if (state.changedSince() != SeriesState.NEVER) {
      out.time(state.changedSince());
    }
    if (!state.sums().equals(Cusum.ZERO)) {
      out.number(state.sums().up());
      out.number(state.sums().down());
    }
    if (state.quiet() instanceof Settled settled) {
      var baseline = settled.baseline();
      out.number(baseline.centre());
      out.number(baseline.spread());
      out.count(baseline.sets());
      out.time(baseline.from());
      out.time(baseline.until());
    } else {
      encode((Forming) state.quiet(), out);
    }
    return out.bytes();
  }

  private static void encode(Forming forming, PackedWriter out) {
    var values = forming.values();
    out.count(values.length);
    for (double value : values) {
      out.value(value);
    }
    if (values.length > 0) {
      out.time(forming.from());
      out.time(forming.until());
    }
    var waiting = forming.waiting();
    if (waiting != null) {
      out.time(waiting.time());
      out.value(waiting.value());
    }
  }

  static SeriesState decode(byte[] bytes) {
    if (bytes.length < 3 || bytes[0] != FORM) {
      throw new IllegalArgumentException("the bytes hold no state of a series of form " + FORM);
    }
    int parts = bytes[1];
    int unit = parts >> UNIT_SHIFT;
    if (unit < 0 || unit >= UNITS.length) {
      throw new IllegalArgumentException("unknown unit of time " + unit);
    }
    var in = new PackedReader(bytes, 3, UNITS[unit], bytes[2]);
    int n = in.count();
    var times = new long[n];
    var values = new double[n];
    for (int i = 0; i < n; i++) {
      times[i] = in.time();
      values[i] = in.value();
    }
    long counted = has(parts, COUNTED) ? in.time() : SeriesState.NEVER;
    long changed = has(parts, CHANGED) ? in.time() : SeriesState.NEVER;
    var sums = has(parts, SUMS) ? new Cusum(in.number(), in.number()) : Cusum.ZERO;
    var quiet = has(parts, SETTLED) ? settled(in) : forming(in, has(parts, WAITING));
    return new SeriesState(
        quiet, counted, sums, changed, n == 0 ? Window.EMPTY : new Window(times, values));
  }

  private static Settled settled(PackedReader in) {
    return new Settled(new Baseline(in.number(), in.number(), in.count(), in.time(), in.time()));
  }

  private static Forming forming(PackedReader in, boolean waiting) {
    var values = new double[in.count()];
    for (int i = 0; i < values.length; i++) {
      values[i] = in.value();
    }
    long from = values.length == 0 ? 0 : in.time();
    long until = values.length == 0 ? 0 : in.time();
    return new Forming(values, from, until, waiting ? new Waiting(in.time(), in.value()) : null);
  }

  private static int parts(SeriesState state) {
    boolean waiting = state.quiet() instanceof Forming forming && forming.waiting() != null;
    return (state.quiet() instanceof Settled ? SETTLED : 0)
        | (waiting ? WAITING : 0)
        | (state.counted() != SeriesState.NEVER ? COUNTED : 0)
        | (state.changedSince() != SeriesState.NEVER ? CHANGED : 0)
        | (state.sums().equals(Cusum.ZERO) ? 0 : SUMS);
  }

  private static boolean has(int parts, int part) {
    return (parts & part) != 0;
  }

  /** The place in {@link #UNITS} of the coarsest unit that every time is a whole number of. */
  private static int unit(SeriesState state) {
    int unit = 0;
    for (long time : state.window().times()) {
      unit = Math.max(unit, unit(time));
    }
    unit = Math.max(unit, Math.max(unit(state.counted()), unit(state.changedSince())));
    if (state.quiet() instanceof Settled settled) {
      return Math.max(
          unit, Math.max(unit(settled.baseline().from()), unit(settled.baseline().until())));
    }
    var forming = (Forming) state.quiet();
    unit = Math.max(unit, Math.max(unit(forming.from()), unit(forming.until())));
    return forming.waiting() == null ? unit : Math.max(unit, unit(forming.waiting().time()));
  }

  private static int unit(long time) {
    if (time == SeriesState.NEVER || time % UNITS[0] == 0) {
      return 0;
    }
    return time % UNITS[1] == 0 ? 1 : 2;
  }

  /** The fewest decimals that write every value exactly. */
  private static int decimals(SeriesState state) {
    int decimals = 0;
    for (double value : state.window().values()) {
      decimals = Packed.decimals(value, decimals);
    }
    if (state.quiet() instanceof Forming forming) {
      for (double value : forming.values()) {
        decimals = Packed.decimals(value, decimals);
      }
      if (forming.waiting() != null) {
        decimals = Packed.decimals(forming.waiting().value(), decimals);
      }
    }
    return decimals;
  }
}
