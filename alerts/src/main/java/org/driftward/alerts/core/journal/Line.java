package org.driftward.alerts.core.journal;

import java.util.Objects;

/**
 * What an entry says, before it has its place in the chain.
 *
 * @param body canonical JSON
 */
public record Line(String subject, String kind, String by, String body) {
  public Line {
    Objects.requireNonNull(subject, "subject");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(body, "body");
  }

  @Override
  public String toString() {
    return "Line[" + kind + "]";
  }
}
