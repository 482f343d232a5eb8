package org.driftward.ingest.core.files;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.Faults;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.UnitConversion;
import org.driftward.ingest.core.files.Column.Field;
import org.driftward.ingest.core.files.Column.Ignored;
import org.driftward.ingest.core.files.Column.Measured;

/** A CSV file as its header describes it: turns a row of cells into a request. Immutable. */
public final class Sheet {

  private static final List<String> TIMES = List.of("takenAt", "recordedAt");

  private final List<String> written;
  private final List<Column> columns;
  private final FileMapping mapping;
  private final UnitConversion units;

  private Sheet(
      List<String> written, List<Column> columns, FileMapping mapping, UnitConversion units) {
    this.written = written;
    this.columns = columns;
    this.mapping = mapping;
    this.units = units;
  }

  /** A header that cannot be understood, with every reason; nothing of the file is read then. */
  public static final class HeaderException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    HeaderException(List<Fault> faults) {
      super("the header has " + faults.size() + " faults");
      this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
      return faults;
    }
  }

  /**
   * @param header the cells of the file's first row
   */
  public static Sheet of(
      List<String> header, FileMapping mapping, Catalogue catalogue, UnitConversion units)
      throws HeaderException {
    var faults = new Faults();
    var columns = new ArrayList<Column>();
    var seen = new HashSet<String>();
    for (var cell : header) {
      if (mapping.ignored().contains(cell)) {
        columns.add(new Ignored(cell));
        continue;
      }
      var pointer = pointer(cell);
      var column =
          Column.named(
              mapping.column(cell),
              catalogue,
              why -> faults.add(pointer, Rule.UNKNOWN_COLUMN, "\"" + cell + "\": " + why));
      column.ifPresent(
          known -> {
            checkUnit(known, units, pointer, faults);
            if (!seen.add(subject(known))) {
              faults.add(pointer, Rule.UNKNOWN_COLUMN, "\"" + cell + "\" stands there twice");
            }
          });
      column.ifPresent(columns::add);
    }
    for (var needed : List.of("encounter", "patient", "takenAt")) {
      if (!seen.contains(needed) && faults.isEmpty()) {
        faults.add("", Rule.UNKNOWN_COLUMN, "there is no column \"" + needed + "\"");
      }
    }
    if (!faults.isEmpty()) {
      throw new HeaderException(faults.list());
    }
    return new Sheet(List.copyOf(header), List.copyOf(columns), mapping, units);
  }

  private static void checkUnit(
      Column column, UnitConversion units, String pointer, Faults faults) {
    if (column instanceof Measured measured
        && measured.unit() != null
        && units.convert(BigDecimal.ONE, measured.unit(), unitOf(measured)).isEmpty()) {
      faults.add(
          pointer,
          Rule.WRONG_UNIT,
          "\"" + measured.unit() + "\" does not convert to the UCUM unit " + unitOf(measured));
    }
  }

  /** The same finding in two units is one column too many. */
  private static String subject(Column column) {
    return column instanceof Measured measured ? "finding " + measured.key() : column.name();
  }

  private static String unitOf(Measured measured) {
    return String.valueOf(measured.entry().unit());
  }

  /**
   * One row as a request.
   *
   * @param request plain Java, for {@link org.driftward.ingest.core.AssessmentReader}
   * @param columns of the findings, in the order of the request; for {@link #atItsColumn}
   */
  public record Row(Map<String, Object> request, List<String> columns) {}

  /**
   * @throws IllegalArgumentException if the row has another number of cells than the header
   */
  public Row row(List<String> cells) {
    if (cells.size() != columns.size()) {
      throw new IllegalArgumentException(
          cells.size() + " cells under a header of " + columns.size());
    }
    var request = new LinkedHashMap<String, Object>();
    var findings = new ArrayList<Map<String, Object>>();
    var names = new ArrayList<String>();
    var content = new TreeMap<String, String>();
    for (int i = 0; i < cells.size(); i++) {
      var column = columns.get(i);
      if (cells.get(i).isEmpty() || column instanceof Ignored) {
        continue;
      }
      var cell = mapping.value(column.name(), cells.get(i));
      content.put(column.name(), cell);
      if (column instanceof Field field) {
        request.put(field.name(), fieldValue(field.name(), cell));
      } else if (column instanceof Measured measured) {
        findings.add(finding(measured, cell));
        names.add(written.get(i));
      }
    }
    request.put("findings", findings);
    request.putIfAbsent("source", "file");
    request.putIfAbsent("id", RowIdentity.of(content));
    return new Row(request, List.copyOf(names));
  }

  private Object fieldValue(String field, String cell) {
    if (TIMES.contains(field)) {
      return mapping.local(cell).<Object>map(Object::toString).orElse(cell);
    }
    return field.equals("revision") ? numberOrText(cell) : cell;
  }

  private Map<String, Object> finding(Measured measured, String cell) {
    var finding = new LinkedHashMap<String, Object>();
    var key = measured.key();
    finding.put("code", key.code());
    if (key.site() != null) {
      finding.put("site", key.site());
    }
    if (key.side() != null) {
      finding.put("side", key.side().word());
    }
    var kind = measured.entry().kind();
    if (kind == Kind.QUANTITY) {
      finding.put("value", inOurUnit(measured, numberOrText(mapping.number(cell))));
      finding.put("unit", unitOf(measured));
    } else if (kind == Kind.GRADE) {
      finding.put("grade", numberOrText(cell));
    } else {
      finding.put(kind == Kind.CODED ? "coded" : "text", cell);
    }
    return finding;
  }

  private Object inOurUnit(Measured measured, Object value) {
    return value instanceof BigDecimal number && measured.unit() != null
        ? units.convert(number, measured.unit(), unitOf(measured)).orElse(number)
        : value;
  }

  /** What is no number stays as it is, and the reader says so. */
  private static Object numberOrText(String cell) {
    try {
      return new BigDecimal(cell);
    } catch (NumberFormatException e) {
      return cell;
    }
  }

  /** A fault of the request, pointing into the row as an object with a field for each column. */
  public static Fault atItsColumn(Fault fault, Row row) {
    var parts = fault.pointer().split("/", -1);
    if (parts.length > 2 && parts[1].equals("findings")) {
      var column = row.columns().get(Integer.parseInt(parts[2]));
      return new Fault(pointer(column), fault.rule(), column + ": " + fault.detail());
    }
    return fault;
  }

  /** RFC 6901, section 3: a name may hold a tilde or a slash. */
  private static String pointer(String column) {
    return "/" + column.replace("~", "~0").replace("/", "~1");
  }
}
