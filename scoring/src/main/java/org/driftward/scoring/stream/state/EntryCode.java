package org.driftward.scoring.stream.state;

import java.util.ArrayList;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Moment;

/**
 * An entry as the value beside its key, which carries the moment: usually 60 to 90 bytes for a full
 * set of vital signs.
 */
public final class EntryCode {

  private static final int FORM = 1;
  private static final int RETRACTED = 16;
  private static final int MOVED = 32;

  private final CodeBook codes;

  public EntryCode(Catalogue catalogue) {
    this.codes = new CodeBook(catalogue);
  }

  /**
   * @param sequence how many snapshots of the encounter had been sent when this was kept
   */
  record Kept(Entry entry, long sequence) {}

  byte[] write(Entry entry, long sequence) {
    var out = new ByteWriter(96);
    body(entry, out.count(sequence));
    return out.bytes();
  }

  Kept read(Moment moment, byte[] bytes) {
    var in = new ByteReader(bytes, 0);
    long sequence = in.count();
    return new Kept(body(moment, in), sequence);
  }

  /** With its moment, for a topic. */
  public byte[] write(Entry entry) {
    var out = new ByteWriter(128);
    out.raw(Keys.time(entry.moment().takenAt())).text(entry.id());
    body(entry, out);
    return out.bytes();
  }

  /**
   * @throws IllegalArgumentException if the bytes are of an unknown form or cut short
   */
  public Entry read(byte[] bytes) {
    var in = new ByteReader(bytes, 0);
    var takenAt = Keys.time(in);
    return body(new Moment(takenAt, in.text()), in);
  }

  private void body(Entry entry, ByteWriter out) {
    var movedFrom = entry.movedFrom();
    out.octet(FORM | (entry.retracted() ? RETRACTED : 0) | (movedFrom == null ? 0 : MOVED));
    out.count(entry.revision());
    if (movedFrom != null) {
      out.text(movedFrom);
    }
    out.count(entry.findings().size());
    for (var finding : entry.findings()) {
      codes.write(finding.key(), out);
      ValueCode.write(finding.value(), out);
    }
  }

  private Entry body(Moment moment, ByteReader in) {
    int first = in.octet();
    if ((first & 0xF) != FORM) {
      throw new IllegalArgumentException("no entry has the form " + first);
    }
    int revision = (int) in.count();
    var movedFrom = (first & MOVED) == 0 ? null : in.text();
    int size = (int) in.count();
    var findings = new ArrayList<Finding>(size);
    for (int i = 0; i < size; i++) {
      findings.add(new Finding(codes.read(in), ValueCode.read(in)));
    }
    return new Entry(moment, revision, (first & RETRACTED) != 0, findings, movedFrom);
  }
}
