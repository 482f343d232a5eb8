package org.driftward.scoring.stream.state;

import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.core.timeline.Facts;

/** Facts change rarely and are few: the count of snapshots sent, then JSON. */
final class FactsCode {

  private static final JsonFormat<Facts> JSON = JsonFormat.of(Facts.class);

  record Kept(Facts facts, long sequence) {
    static final Kept NOTHING = new Kept(Facts.NONE, 0);
  }

  private FactsCode() {}

  static byte[] write(Facts facts, long sequence) {
    return new ByteWriter(256).count(sequence).raw(JSON.write(facts)).bytes();
  }

  static Kept read(byte[] bytes) {
    var in = new ByteReader(bytes, 0);
    long sequence = in.count();
    return new Kept(JSON.read(in.rest()), sequence);
  }
}
