package org.driftward.scoring.stream;

import java.util.Arrays;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.timeline.Move;
import org.driftward.scoring.stream.state.EntryCode;

/** A move on its way to another encounter, whose identifier is the record's key. */
final class MoveCode {

  private static final byte ARRIVES = 1;
  private static final byte LEAVES = 2;

  private final EntryCode entries;

  MoveCode(Catalogue catalogue) {
    this.entries = new EntryCode(catalogue);
  }

  byte[] write(Move move) {
    var entry = entries.write(move.entry());
    var bytes = new byte[entry.length + 1];
    bytes[0] = move.arrives() ? ARRIVES : LEAVES;
    System.arraycopy(entry, 0, bytes, 1, entry.length);
    return bytes;
  }

  /**
   * @throws IllegalArgumentException if the bytes are no move
   */
  Move read(String to, byte[] bytes) {
    if (bytes.length == 0 || (bytes[0] != ARRIVES && bytes[0] != LEAVES)) {
      throw new IllegalArgumentException("no move");
    }
    var entry = entries.read(Arrays.copyOfRange(bytes, 1, bytes.length));
    return new Move(to, entry, bytes[0] == ARRIVES);
  }
}
