package org.driftward.ingest.fhir;

import java.math.BigDecimal;
import java.util.Optional;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Text;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.fhir.Codings.Known;
import org.driftward.ingest.unit.UcumConversion;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;

/** Turns the value of an Observation or of one of its components into a finding. Thread-safe. */
final class FindingReader {

  private final Codings codings;
  private final UcumConversion units = new UcumConversion();

  FindingReader(Codings codings) {
    this.codings = codings;
  }

  /** The finding, or empty with a fault in {@code into}. */
  Optional<Finding> read(Known known, FindingKey key, Type value, String pointer, Converted into) {
    Optional<? extends FindingValue> read =
        switch (known.entry().kind()) {
          case QUANTITY -> quantity(known, value, pointer, into);
          case GRADE -> grade(value, pointer, into);
          case CODED -> coded(known, value, pointer, into);
          case TEXT -> text(value, pointer, into);
        };
    return read.map(found -> new Finding(key, found));
  }

  private Optional<FindingValue.Quantity> quantity(
      Known known, Type value, String pointer, Converted into) {
    var entry = known.entry();
    if (!(value instanceof Quantity quantity) || quantity.getValue() == null) {
      return wrongKind(entry.kind(), pointer, into);
    }
    if (quantity.hasComparator()) {
      into.fault(
          pointer + "/valueQuantity/comparator",
          Rule.INEXACT_VALUE,
          "A value with a comparator is no value");
      return Optional.empty();
    }
    if (!FindingValue.Quantity.fits(quantity.getValue())) {
      return tooLong(pointer, into);
    }
    var unit = codings.unit(known, quantity);
    if (unit.isEmpty()) {
      into.fault(
          pointer + "/valueQuantity/code",
          Rule.WRONG_UNIT,
          "A unit is a UCUM code with system " + CodeSystem.UCUM + ", for example " + entry.unit());
      return Optional.empty();
    }
    var converted = units.convert(quantity.getValue(), unit.get(), entry.unit());
    if (converted.isEmpty()) {
      into.fault(
          pointer + "/valueQuantity/code",
          Rule.WRONG_UNIT,
          "\"" + unit.get() + "\" cannot be converted to " + entry.unit());
    } else if (!FindingValue.Quantity.fits(converted.get())) {
      return tooLong(pointer, into);
    }
    return converted.map(exact -> new FindingValue.Quantity(exact, entry.unit()));
  }

  private static <T> Optional<T> tooLong(String pointer, Converted into) {
    into.fault(pointer, Rule.MALFORMED_NUMBER, "This number has more digits than we can keep");
    return Optional.empty();
  }

  private static Optional<Grade> grade(Type value, String pointer, Converted into) {
    BigDecimal number = null;
    if (value instanceof IntegerType integer && integer.getValue() != null) {
      number = BigDecimal.valueOf(integer.getValue());
    } else if (value instanceof Quantity quantity && !quantity.hasComparator()) {
      number = quantity.getValue();
    }
    if (number == null) {
      return wrongKind(Kind.GRADE, pointer, into);
    }
    if (!FindingValue.Quantity.fits(number)) {
      return tooLong(pointer, into);
    }
    try {
      return Optional.of(new Grade(number.intValueExact()));
    } catch (ArithmeticException e) {
      into.fault(pointer, Rule.WRONG_KIND, number.toPlainString() + " is not a whole number");
      return Optional.empty();
    }
  }

  private Optional<Coded> coded(Known known, Type value, String pointer, Converted into) {
    var option =
        value instanceof CodeableConcept concept
            ? codings.option(known, concept)
            : value instanceof StringType words
                ? codings.option(known, words.getValue())
                : Optional.<String>empty();
    if (option.isEmpty() && !(value instanceof CodeableConcept)) {
      return wrongKind(known.entry().kind(), pointer, into);
    }
    if (option.isEmpty()) {
      into.fault(
          pointer + "/valueCodeableConcept",
          Rule.UNKNOWN_OPTION,
          "No coding of the answer is known; the options are " + known.entry().options());
    }
    return option.map(Coded::new);
  }

  private static Optional<Text> text(Type value, String pointer, Converted into) {
    return value instanceof StringType string && string.getValue() != null
        ? Optional.of(new Text(string.getValue()))
        : wrongKind(Kind.TEXT, pointer, into);
  }

  private static <T> Optional<T> wrongKind(Kind kind, String pointer, Converted into) {
    into.fault(pointer, Rule.WRONG_KIND, "This finding is a " + kind.word());
    return Optional.empty();
  }
}
