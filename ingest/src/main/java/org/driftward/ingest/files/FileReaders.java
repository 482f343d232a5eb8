package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.files.LineCutter;
import org.driftward.ingest.core.files.RecordCutter;
import org.driftward.ingest.core.files.Sheet.HeaderException;
import org.driftward.ingest.core.files.Slice;
import org.driftward.ingest.files.MappingText.NotAMappingException;
import org.driftward.ingest.files.RowText.BrokenRowException;
import org.driftward.ingest.store.MediaCharset;
import org.driftward.ingest.unit.UcumConversion;
import org.jspecify.annotations.Nullable;

/** Knows how a file of a given media type and mapping is cut and read. Thread-safe. */
@Singleton
final class FileReaders {

  private final Catalogue catalogue;
  private final AssessmentReader reader;
  private final UcumConversion units = new UcumConversion();

  FileReaders(Catalogue catalogue, AssessmentReader reader) {
    this.catalogue = catalogue;
    this.reader = reader;
  }

  /** Nothing of the file can be understood. */
  static final class UnreadableFileException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    UnreadableFileException(List<Fault> faults) {
      super("the file cannot be read");
      this.faults = List.copyOf(faults);
    }

    static UnreadableFileException because(String why) {
      return new UnreadableFileException(
          List.of(new Fault("", Rule.MALFORMED_RESOURCE.word(), why)));
    }

    List<Fault> faults() {
      return faults;
    }
  }

  /**
   * A kind of file.
   *
   * @param headed whether its first row says what the others hold
   * @param reader makes the reader of its rows, given that first row, or no bytes
   */
  record Kind(boolean headed, Slice.Cutter cutter, Reader reader) {
    interface Reader {
      RowReader of(byte[] header) throws UnreadableFileException;
    }
  }

  Kind kind(String contentType, @Nullable String mappingText) throws UnreadableFileException {
    var format =
        FileFormat.of(contentType)
            .orElseThrow(() -> UnreadableFileException.because("neither CSV nor NDJSON"));
    if (format == FileFormat.NDJSON) {
      return new Kind(false, new LineCutter(), header -> RowReader.ndjson(reader));
    }
    var charset = MediaCharset.of(contentType);
    if (!RowText.supports(charset)) {
      throw UnreadableFileException.because("send it in UTF-8");
    }
    try {
      var mapping = MappingText.read(mappingText);
      return new Kind(
          true,
          new RecordCutter(mapping.delimiter()),
          header -> {
            try {
              return RowReader.csv(header, charset, mapping, catalogue, units::convert, reader);
            } catch (BrokenRowException e) {
              throw new UnreadableFileException(RowReader.faults(e));
            } catch (HeaderException e) {
              throw new UnreadableFileException(e.faults());
            }
          });
    } catch (NotAMappingException e) {
      throw UnreadableFileException.because(String.valueOf(e.getMessage()));
    }
  }
}
