package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How far an uploaded file has come.
 *
 * @param name of the file, as the sender calls it
 * @param by the account that sends it
 * @param length of the whole file in bytes, or null where the sender did not say
 * @param received bytes that have arrived; the offset of the next part
 * @param complete whether the sender has sent all of it
 * @param done bytes that are dealt with
 * @param read rows that are dealt with, the header left out
 * @param accepted of them
 * @param rejected of them; each is reported with its line
 * @param faults why nothing of the file was read; empty unless {@link State#REFUSED}
 */
public record FileImport(
    String id,
    String name,
    String by,
    Instant createdAt,
    State state,
    @Nullable Long length,
    long received,
    boolean complete,
    long done,
    long read,
    long accepted,
    long rejected,
    List<Fault> faults) {

  /** Where a file stands. */
  public enum State implements Word {
    RUNNING,
    FINISHED,
    REFUSED
  }

  /**
   * A row that was refused.
   *
   * @param line of the file on which it begins, counted from 1
   * @param row as it came; text in the file's encoding, with what does not decode replaced
   */
  public record RejectedRow(long line, List<Fault> faults, String row) {
    public RejectedRow {
      faults = List.copyOf(faults);
    }

    @Override
    public String toString() {
      return "RejectedRow[" + line + "]";
    }
  }

  public FileImport {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(createdAt, "createdAt");
    Objects.requireNonNull(state, "state");
    faults = List.copyOf(faults);
  }

  public boolean running() {
    return state == State.RUNNING;
  }
}
