package org.driftward.ingest.contract;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A problem in the sense of RFC 9457, as every call of the HTTP interface answers it.
 *
 * @param type a relative URI that names the kind of problem, for example {@code
 *     /problems/refused-input}
 * @param title the kind in words; the same for every problem of the type
 * @param status the HTTP status
 * @param detail this occurrence in words, or null
 * @param faults every fault found, in the order of the input; empty where that makes no sense
 */
public record Problem(
    String type, String title, int status, @Nullable String detail, List<Fault> faults) {

  public static final String MEDIA_TYPE = "application/problem+json";

  public Problem {
    faults = faults == null ? List.of() : List.copyOf(faults);
  }

  public static Problem of(int status, String type, String title, @Nullable String detail) {
    return new Problem("/problems/" + type, title, status, detail, List.of());
  }
}
