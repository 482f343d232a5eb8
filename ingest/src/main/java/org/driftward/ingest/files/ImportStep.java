package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.ingest.core.files.Slice;
import org.driftward.ingest.files.FileIntake.Lot;
import org.driftward.ingest.files.FileIntake.Row;
import org.driftward.ingest.files.FileReaders.Kind;
import org.driftward.ingest.files.FileReaders.UnreadableFileException;
import org.driftward.ingest.store.ImportQueue;
import org.driftward.ingest.store.ImportQueue.Arrived;
import org.driftward.ingest.store.ImportQueue.Broken;
import org.driftward.ingest.store.ImportQueue.Job;
import org.driftward.ingest.store.ImportQueue.Worked;
import org.jspecify.annotations.Nullable;

/**
 * One batch of rows of an uploaded file. It begins where the last one ended and keeps nothing in
 * memory behind it, so a file of any length needs the room of one batch.
 *
 * <p>Kafka acknowledges the rows before the database moves on. A crash between the two brings the
 * same batch in again; its assessments have the same ids and its refusals the same names, so
 * nothing is doubled.
 */
@Singleton
final class ImportStep implements ImportQueue.Worker {

  private static final int CHUNK = 1 << 20;
  private static final int MOST_ROWS = 500;
  private static final byte[] LINE_END = {'\r', '\n'};

  private final FileReaders readers;
  private final FileIntake files;
  private final AssessmentIntake intake;

  ImportStep(FileReaders readers, FileIntake files, AssessmentIntake intake) {
    this.readers = readers;
    this.files = files;
    this.intake = intake;
  }

  @Override
  public Worked work(Job job, Arrived arrived) {
    try {
      return work(job, readers.kind(job.contentType(), job.mappingText()), arrived);
    } catch (UnreadableFileException e) {
      return new Worked.Refused(e.faults());
    }
  }

  private Worked work(Job job, Kind kind, Arrived arrived) throws UnreadableFileException {
    var chunk = arrived.read(job.position(), CHUNK);
    boolean last = job.complete() && job.position() + chunk.length == job.received();
    var slices = kind.cutter().cut(chunk, last, MOST_ROWS);
    if (slices.isEmpty() && !last) {
      return new Worked.Starved();
    }
    var rows = rows(job, chunk, slices);
    var header = job.header();
    if (kind.headed() && header == null) {
      if (rows.isEmpty()) {
        if (last) {
          throw UnreadableFileException.because("the file is empty");
        }
        // Nothing but empty lines so far.
        return moved(job, chunk, slices, last, null, List.of());
      }
      header = rows.remove(0).bytes();
    }
    var verdicts = files.bring(rows, lot(job, reader(job, kind, header), header));
    return moved(job, chunk, slices, last, header, verdicts);
  }

  private static List<Row> rows(Job job, byte[] chunk, List<Slice> slices) {
    var rows = new ArrayList<Row>();
    long line = job.lines() + 1;
    for (var slice : slices) {
      if (!slice.isEmpty()) {
        var bytes = Bytes.of(chunk, slice.from(), slice.to());
        rows.add(new Row(job.position() + slice.from(), line, bytes, slice.whole()));
      }
      line += slice.lines();
    }
    return rows;
  }

  /** A header that cannot be understood is kept with its faults like every refused input. */
  private RowReader reader(Job job, Kind kind, @Nullable Bytes header)
      throws UnreadableFileException {
    var first = header == null ? new byte[0] : header.array();
    try {
      return kind.reader().of(first);
    } catch (UnreadableFileException e) {
      Passage.of(
          intake.refuse(received(job, first).named("import-" + job.id() + "-header"), e.faults()));
      throw e;
    }
  }

  private static Lot lot(Job job, RowReader reader, @Nullable Bytes header) {
    return new Lot(
        reader,
        new Bearer(job.by(), job.wards()),
        job.createdAt(),
        row ->
            received(job, header == null ? row.bytes().array() : join(header, row.bytes()))
                .named("import-" + job.id() + "-" + row.offset()));
  }

  /** A row with its header is a file of its own, which can be mended and replayed by itself. */
  private static Received received(Job job, byte[] bytes) {
    return new Received(
        "file/" + job.by(), Source.FILE, FileGate.target(job.mapping()), job.contentType(), bytes);
  }

  private static byte[] join(Bytes header, Bytes row) {
    return ByteBuffer.allocate(header.length() + LINE_END.length + row.length())
        .put(header.array())
        .put(LINE_END)
        .put(row.array())
        .array();
  }

  private static Worked moved(
      Job job,
      byte[] chunk,
      List<Slice> slices,
      boolean last,
      @Nullable Bytes header,
      List<FileIntake.Verdict> verdicts) {
    int consumed = slices.isEmpty() ? 0 : slices.get(slices.size() - 1).next();
    var broken =
        verdicts.stream()
            .filter(verdict -> !verdict.faults().isEmpty())
            .map(verdict -> broken(verdict.row(), verdict.faults()))
            .toList();
    return new Worked.Moved(
        job.position() + consumed,
        job.lines() + slices.stream().mapToInt(Slice::lines).sum(),
        header,
        verdicts.size(),
        verdicts.size() - broken.size(),
        broken,
        last && consumed == chunk.length);
  }

  private static Broken broken(Row row, List<Fault> faults) {
    return new Broken(row.offset(), row.line(), row.bytes(), faults);
  }
}
