package org.driftward.scoring.stream.state;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.FindingValue.Text;

/**
 * A value in a few bytes. It does not lean on the catalogue: a unit that changes there must not
 * change what was measured.
 */
final class ValueCode {

  /** Units that are written as their place in this list, from 1. Append only, never reorder. */
  private static final List<String> UNITS =
      List.of(
          "/min", "%", "mm[Hg]", "Cel", "L/min", "mL", "mL/h", "kg", "g", "mm", "cm", "s", "mmol/L",
          "mg/dL", "{score}", "1", "h", "deg", "m", "L", "kPa");

  private static final int QUANTITY = 0;
  private static final int LONG_QUANTITY = 1;
  private static final int GRADE = 2;
  private static final int CODED = 3;
  private static final int TEXT = 4;

  /** The kind and the scale share the first byte; a larger scale goes the long way. */
  private static final int SCALES = 16;

  private ValueCode() {}

  static void write(FindingValue value, ByteWriter out) {
    if (value instanceof Quantity quantity) {
      quantity(quantity, out);
    } else if (value instanceof Grade grade) {
      out.octet(GRADE).signed(grade.grade());
    } else if (value instanceof Coded coded) {
      out.octet(CODED).text(coded.code());
    } else if (value instanceof Text text) {
      out.octet(TEXT).text(text.text());
    }
  }

  static FindingValue read(ByteReader in) {
    int first = in.octet();
    return switch (first & 0xF) {
      case QUANTITY -> new Quantity(BigDecimal.valueOf(in.signed(), first >> 4), unit(in));
      case LONG_QUANTITY -> {
        var unscaled = new BigInteger(in.block());
        yield new Quantity(new BigDecimal(unscaled, (int) in.signed()), unit(in));
      }
      case GRADE -> new Grade((int) in.signed());
      case CODED -> new Coded(in.text());
      case TEXT -> new Text(in.text());
      default -> throw new IllegalArgumentException("no value has the kind " + first);
    };
  }

  private static void quantity(Quantity quantity, ByteWriter out) {
    var value = quantity.value();
    if (value.precision() <= 18 && value.scale() < SCALES) {
      out.octet(QUANTITY | (value.scale() << 4)).signed(value.unscaledValue().longValueExact());
    } else {
      out.octet(LONG_QUANTITY).block(value.unscaledValue().toByteArray()).signed(value.scale());
    }
    int known = UNITS.indexOf(quantity.unit()) + 1;
    out.count(known);
    if (known == 0) {
      out.text(quantity.unit());
    }
  }

  private static String unit(ByteReader in) {
    int known = (int) in.count();
    return known == 0 ? in.text() : UNITS.get(known - 1);
  }
}
