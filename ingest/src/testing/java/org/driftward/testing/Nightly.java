package org.driftward.testing;

/**
 * How much of a long test is run: a small share always, the whole at night, which {@code
 * -Ddriftward.nightly=true} says it is. The seeds are the same, so the share is a beginning of the
 * whole.
 */
public final class Nightly {

  private static final boolean NIGHT = Boolean.getBoolean("driftward.nightly");

  private Nightly() {}

  /** The first where it is not night, the second where it is. */
  public static int count(int always, int nightly) {
    return NIGHT ? nightly : always;
  }

  /** As many at night, a tenth of it else. */
  public static int tenth(int nightly) {
    return count(nightly / 10, nightly);
  }
}
