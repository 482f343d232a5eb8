package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.files.Slice;
import org.driftward.ingest.files.FileIntake.Lot;
import org.driftward.ingest.files.FileIntake.Row;
import org.driftward.ingest.files.FileReaders.UnreadableFileException;
import org.driftward.ingest.store.FileMappings;
import org.jspecify.annotations.Nullable;

/** A row of a file that was refused, with its header before it: a small file. */
@Singleton
public class FileGate implements Gate {

  private static final String TARGET = "POST /api/imports";
  private static final String MAPPED = TARGET + "?mapping=";

  private final FileReaders readers;
  private final FileIntake files;
  private final FileMappings mappings;
  private final AssessmentIntake intake;
  private final Clock clock;

  FileGate(
      FileReaders readers,
      FileIntake files,
      FileMappings mappings,
      AssessmentIntake intake,
      Clock clock) {
    this.readers = readers;
    this.files = files;
    this.mappings = mappings;
    this.intake = intake;
    this.clock = clock;
  }

  static String target(@Nullable String mapping) {
    return mapping == null ? TARGET : MAPPED + mapping;
  }

  @Override
  public Gate over(AssessmentIntake another, EncounterDirectory house) {
    return new FileGate(readers, files.over(another, house), mappings, another, clock);
  }

  @Override
  public boolean serves(String target) {
    return target.equals(TARGET) || target.startsWith(MAPPED);
  }

  /** By the mapping as it is now: the mapping may be what was mended. */
  @Override
  public Passage pass(Received received, Bearer bearer) {
    var target = received.target();
    var mapping =
        target.startsWith(MAPPED)
            ? mappings.find(target.substring(MAPPED.length())).orElse(null)
            : null;
    try {
      var kind = readers.kind(received.contentType(), mapping);
      var rows = rows(received.bytes(), kind.cutter());
      var header = kind.headed() && !rows.isEmpty() ? rows.remove(0).bytes().array() : new byte[0];
      var reader = kind.reader().of(header);
      return bring(rows, new Lot(reader, bearer, clock.instant(), row -> received));
    } catch (UnreadableFileException e) {
      return Passage.of(intake.refuse(received, e.faults()));
    }
  }

  private Passage bring(List<Row> rows, Lot lot) {
    var verdicts = files.bring(rows, lot);
    var faults = new ArrayList<Fault>();
    boolean kept = false;
    for (var verdict : verdicts) {
      faults.addAll(verdict.faults());
      kept |= verdict.faults().isEmpty();
    }
    return new Passage(kept || verdicts.isEmpty(), faults);
  }

  private static List<Row> rows(byte[] file, Slice.Cutter cutter) {
    var rows = new ArrayList<Row>();
    long line = 1;
    for (var slice : cutter.cut(file, true, Integer.MAX_VALUE)) {
      if (!slice.isEmpty()) {
        var bytes = Bytes.of(file, slice.from(), slice.to());
        rows.add(new Row(slice.from(), line, bytes, slice.whole()));
      }
      line += slice.lines();
    }
    return rows;
  }
}
