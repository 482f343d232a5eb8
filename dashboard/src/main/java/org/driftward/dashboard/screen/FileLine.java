package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.FileImport;

/**
 * One uploaded file in words.
 *
 * @param done bytes that are dealt with
 * @param size of the file as far as it is known
 * @param percent dealt with
 * @param state in words
 * @param rows what became of them
 * @param reasons why nothing of it was read; empty if something was
 */
public record FileLine(
    String id,
    String name,
    String by,
    Instant at,
    long done,
    long size,
    long percent,
    String state,
    String rows,
    long rejected,
    List<String> reasons) {

  static FileLine of(FileImport file) {
    var length = file.length();
    long size = length == null ? Math.max(file.received(), 1) : Math.max(length, 1);
    return new FileLine(
        file.id(),
        file.name(),
        file.by(),
        file.createdAt(),
        file.done(),
        size,
        file.running() ? Math.min(100, 100 * file.done() / size) : 100,
        state(file),
        Wording.count(file.read(), "row", "rows")
            + " read, "
            + file.accepted()
            + " accepted, "
            + file.rejected()
            + " refused",
        file.rejected(),
        file.faults().stream().map(Fault::detail).toList());
  }

  private static String state(FileImport file) {
    return switch (file.state()) {
      case RUNNING -> file.complete() ? "is read" : "is still arriving";
      case FINISHED -> "finished";
      case REFUSED -> "cannot be read";
    };
  }
}
