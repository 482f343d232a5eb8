package org.driftward.ingest.contract;

import java.util.Objects;

/**
 * A code as a feed sends it. Nothing in it describes a patient.
 *
 * @param source the feed, for example {@code hl7:GATEWAY|NORTH}; the same local code may mean two
 *     things in two feeds
 * @param system the coding system as the feed names it, for example {@code LN}; empty where it
 *     names none
 * @param code never blank
 */
public record ForeignCode(String source, String system, String code) {

  public ForeignCode {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(system, "system");
    if (code.isBlank()) {
      throw new IllegalArgumentException("a blank code");
    }
  }
}
