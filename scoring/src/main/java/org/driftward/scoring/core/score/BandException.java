package org.driftward.scoring.core.score;

/** A band that does not fit the others of its row. */
public final class BandException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final int band;

  BandException(int band, String message) {
    super(message);
    this.band = band;
  }

  /** Which of the row's bands, from 0. */
  public int band() {
    return band;
  }
}
