package org.driftward.ingest.files;

import java.nio.charset.Charset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.UnitConversion;
import org.driftward.ingest.core.files.FileMapping;
import org.driftward.ingest.core.files.RowIdentity;
import org.driftward.ingest.core.files.Sheet;
import org.driftward.ingest.core.files.Sheet.HeaderException;
import org.driftward.ingest.files.RowText.BrokenRowException;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;

/** Reads the rows of one file. */
interface RowReader {

  /**
   * A row as a request.
   *
   * @param atItsColumn moves the pointer of a fault from the request to the file's own columns
   */
  record Read(Reading reading, UnaryOperator<Fault> atItsColumn) {}

  /**
   * @throws BrokenRowException if the row is no row of this file
   */
  Read read(byte[] row, Defaults defaults) throws BrokenRowException;

  /** Of a CSV file with this header. */
  static RowReader csv(
      byte[] header,
      Charset charset,
      FileMapping mapping,
      Catalogue catalogue,
      UnitConversion units,
      AssessmentReader reader)
      throws BrokenRowException, HeaderException {
    var cells = RowText.cells(RowText.decode(header, charset), mapping);
    var sheet = Sheet.of(cells, mapping, catalogue, units);
    return (row, defaults) -> {
      Sheet.Row read;
      try {
        read = sheet.row(RowText.cells(RowText.decode(row, charset), mapping));
      } catch (IllegalArgumentException e) {
        throw new BrokenRowException(String.valueOf(e.getMessage()));
      }
      return new Read(
          reader.read(read.request(), defaults), fault -> Sheet.atItsColumn(fault, read));
    };
  }

  /** Of a file of JSON objects. */
  static RowReader ndjson(AssessmentReader reader) {
    return (row, defaults) -> {
      Object request;
      try {
        request = JsonTree.parse(row);
      } catch (NotJsonException e) {
        throw new BrokenRowException(String.valueOf(e.getMessage()));
      }
      if (!(request instanceof Map<?, ?> object)) {
        throw new BrokenRowException("a row is one JSON object");
      }
      var completed = new LinkedHashMap<Object, Object>(object);
      completed.putIfAbsent("id", RowIdentity.of(row));
      completed.putIfAbsent("source", "file");
      return new Read(reader.read(completed, defaults), UnaryOperator.identity());
    };
  }

  /** What a row that cannot be read is refused for. */
  static List<Fault> faults(BrokenRowException broken) {
    return List.of(new Fault("", Rule.MALFORMED_ROW.word(), String.valueOf(broken.getMessage())));
  }
}
