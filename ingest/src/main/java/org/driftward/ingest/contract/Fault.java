package org.driftward.ingest.contract;

import java.util.Objects;

/**
 * One thing wrong with an input.
 *
 * @param pointer where, as a JSON pointer (RFC 6901) into the request; empty for the whole
 * @param rule which rule it breaks: a stable lower-case word with hyphens, for programs
 * @param detail what is wrong, in words, for people; may name the offending value, so it goes to
 *     the sender and to {@link Topic#REJECTED}, never to a log
 */
public record Fault(String pointer, String rule, String detail) {
  public Fault {
    Objects.requireNonNull(pointer, "pointer");
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(detail, "detail");
  }

  public Fault under(String prefix) {
    return new Fault(prefix + pointer, rule, detail);
  }

  @Override
  public String toString() {
    return "Fault[" + rule + "]";
  }
}
