package org.driftward.alerts.core.episode;

/** A care plan that cannot be signed as it is. The message may name what was asked for. */
public final class PlanRefusedException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String field;

  public PlanRefusedException(String field, String why) {
    super(why);
    this.field = field;
  }

  /** Name of the care plan's field, or {@code signedBy} where the role is not enough. */
  public String field() {
    return field;
  }
}
