package org.driftward.scoring.stream.state;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.SeriesState;
import org.driftward.scoring.core.plan.VitalSet;
import org.driftward.scoring.core.timeline.Head;
import org.driftward.scoring.core.timeline.Moment;
import org.driftward.scoring.core.timeline.Strand;

/**
 * A head as the value of a checkpoint, whose key carries its moment. What follows from the state of
 * a series (drift, change, trend) is not written.
 */
final class HeadCode {

  private static final int FORM = 1;

  private final CodeBook codes;

  HeadCode(Catalogue catalogue) {
    this.codes = new CodeBook(catalogue);
  }

  byte[] write(Head head) {
    var out = new ByteWriter(4096).octet(FORM).count(head.sets());
    var names = new Names();
    out.count(head.strands().size());
    head.strands().values().forEach(strand -> write(strand, names, out));
    out.count(head.totals().size());
    head.totals().values().forEach(strand -> write(strand, names, out));
    out.count(head.sums().size());
    head.sums()
        .values()
        .forEach(
            readings -> {
              out.count(readings.size());
              readings.forEach(reading -> write(reading, names, out));
            });
    var set = head.newestSet();
    out.octet(set == null ? 0 : 1);
    if (set != null) {
      out.raw(Keys.time(set.takenAt())).count(set.partial().size());
      set.partial().forEach(out::text);
    }
    return out.bytes();
  }

  /**
   * @throws IllegalArgumentException if the bytes are of an unknown form or cut short
   */
  Head read(Moment at, byte[] bytes) {
    var in = new ByteReader(bytes, 0);
    int form = in.octet();
    if (form != FORM) {
      throw new IllegalArgumentException("no checkpoint has the form " + form);
    }
    long sets = in.count();
    var names = new Names();
    var strands = new TreeMap<FindingKey, Strand>();
    for (long left = in.count(); left > 0; left--) {
      var strand = strand(names, in);
      strands.put(strand.newest().key(), strand);
    }
    var totals = new TreeMap<String, Strand>();
    for (long left = in.count(); left > 0; left--) {
      var strand = strand(names, in);
      totals.put(strand.newest().code(), strand);
    }
    var sums = new TreeMap<String, List<Reading>>();
    for (long left = in.count(); left > 0; left--) {
      var readings = new ArrayList<Reading>();
      for (long more = in.count(); more > 0; more--) {
        readings.add(reading(names, in));
      }
      sums.put(readings.get(0).code(), List.copyOf(readings));
    }
    return new Head(at, sets, strands, totals, sums, in.octet() == 0 ? null : set(in));
  }

  private void write(Strand strand, Names names, ByteWriter out) {
    write(strand.newest(), names, out);
    out.block(strand.state().encode());
  }

  private Strand strand(Names names, ByteReader in) {
    var newest = reading(names, in);
    return Strand.bare(newest, SeriesState.decode(in.block()));
  }

  private void write(Reading reading, Names names, ByteWriter out) {
    codes.write(reading.key(), out);
    ValueCode.write(reading.value(), out);
    names.write(new Moment(reading.takenAt(), reading.assessment()), out);
  }

  private Reading reading(Names names, ByteReader in) {
    var key = codes.read(in);
    var value = ValueCode.read(in);
    var moment = names.read(in);
    return new Reading(key, value, moment.takenAt(), moment.assessment());
  }

  private static VitalSet set(ByteReader in) {
    var takenAt = Keys.time(in);
    var partial = new ArrayList<String>();
    for (long left = in.count(); left > 0; left--) {
      partial.add(in.text());
    }
    return new VitalSet(takenAt, partial);
  }

  /** Most newest readings are of the same few moments: each is written once, then by number. */
  private static final class Names {
    private final List<Moment> moments = new ArrayList<>();

    void write(Moment moment, ByteWriter out) {
      int known = moments.indexOf(moment) + 1;
      out.count(known);
      if (known == 0) {
        moments.add(moment);
        out.raw(Keys.time(moment.takenAt())).block(moment.assessment().getBytes(UTF_8));
      }
    }

    Moment read(ByteReader in) {
      int known = (int) in.count();
      if (known > 0) {
        return moments.get(known - 1);
      }
      var moment = new Moment(Keys.time(in), in.text());
      moments.add(moment);
      return moment;
    }
  }
}
