package org.driftward.ingest.hl7;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.FindingValue.Text;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.Meaning;
import org.driftward.ingest.core.mapping.Systems;
import org.driftward.ingest.unit.UcumConversion;

/** The value of a result, OBX-5, by its type, OBX-2, and its unit, OBX-6. Thread-safe. */
final class ValueReader {

  private static final int TYPE = 2;
  private static final int VALUE = 5;
  private static final int UNIT = 6;

  /** Chapter 2A, NM: an optional sign, digits, an optional decimal point; no exponent. */
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d{1,24}(\\.\\d{0,24})?|\\.\\d{1,24})");

  private final CodeMap codes;
  private final UcumConversion units = new UcumConversion();

  ValueReader(CodeMap codes) {
    this.codes = codes;
  }

  /** Empty with a fault if the value is none that the finding may have. */
  Optional<? extends FindingValue> read(
      CatalogueEntry entry, Meaning meaning, Hl7Segment obx, Content into) {
    if (obx.repetitions(VALUE) > 1 && entry.kind() != Kind.TEXT) {
      into.fault(obx.pointer(VALUE), Rule.WRONG_KIND, "One value is taken, not several");
      return Optional.empty();
    }
    return switch (entry.kind()) {
      case QUANTITY -> quantity(entry, meaning, obx, into);
      case GRADE -> grade(obx, into);
      case CODED -> coded(entry, meaning, obx, into);
      case TEXT -> text(obx, into);
    };
  }

  private Optional<Quantity> quantity(
      CatalogueEntry entry, Meaning meaning, Hl7Segment obx, Content into) {
    var number = number(entry.kind(), obx, into);
    if (number.isEmpty()) {
      return Optional.empty();
    }
    var unit = unit(meaning, obx);
    var converted = unit.flatMap(ucum -> units.convert(number.get(), ucum, entry.unit()));
    if (converted.isEmpty()) {
      into.fault(
          obx.pointer(UNIT),
          Rule.WRONG_UNIT,
          "\"" + obx.value(UNIT) + "\" is no unit that is known to convert to " + entry.unit());
      return Optional.empty();
    }
    return converted
        .filter(Quantity::fits)
        .map(exact -> new Quantity(exact, entry.unit()))
        .or(
            () -> {
              into.fault(
                  obx.pointer(VALUE), Rule.MALFORMED_NUMBER, "a number with too many digits");
              return Optional.empty();
            });
  }

  /** In UCUM: as the sender says, else as the site has settled. Never a guess. */
  private Optional<String> unit(Meaning meaning, Hl7Segment obx) {
    var word = obx.value(UNIT);
    if (word.isEmpty()) {
      return Optional.ofNullable(meaning.unit());
    }
    return "UCUM".equals(obx.value(UNIT, 3))
        ? Optional.of(word)
        : meaning.ucum(word).or(() -> codes.unit(word)).or(() -> Optional.of(word));
  }

  private static Optional<Grade> grade(Hl7Segment obx, Content into) {
    return number(Kind.GRADE, obx, into)
        .flatMap(
            number -> {
              try {
                return Optional.of(new Grade(number.intValueExact()));
              } catch (ArithmeticException e) {
                into.fault(
                    obx.pointer(VALUE),
                    Rule.WRONG_KIND,
                    number.toPlainString() + " is not a whole number");
                return Optional.empty();
              }
            });
  }

  /** A number is written as NM, as SN without comparator, or as a text that is nothing else. */
  private static Optional<BigDecimal> number(Kind kind, Hl7Segment obx, Content into) {
    var type = obx.value(TYPE);
    var text =
        switch (type) {
          case "NM", "ST", "TX", "FT" -> obx.value(VALUE);
          case "SN" -> structured(obx);
          default -> "";
        };
    if (NUMBER.matcher(text).matches()) {
      return Optional.of(new BigDecimal(text.endsWith(".") ? text + "0" : text));
    }
    boolean bound = text.startsWith("<") || text.startsWith(">");
    into.fault(
        obx.pointer(VALUE),
        bound ? Rule.INEXACT_VALUE : Rule.WRONG_KIND,
        bound
            ? "A bound is no value"
            : "This finding is a " + kind.word() + ", and this no number of type " + type);
    return Optional.empty();
  }

  /** SN: comparator, number, separator, second number. "=" is the standard's default. */
  private static String structured(Hl7Segment obx) {
    var comparator = obx.value(VALUE, 1);
    boolean single = obx.value(VALUE, 3).isEmpty() && obx.value(VALUE, 4).isEmpty();
    boolean exact = comparator.isEmpty() || comparator.equals("=");
    return exact && single ? obx.value(VALUE, 2) : "<>";
  }

  private Optional<Coded> coded(
      CatalogueEntry entry, Meaning meaning, Hl7Segment obx, Content into) {
    var option = option(entry, meaning, obx);
    if (option.isEmpty()) {
      into.fault(
          obx.pointer(VALUE),
          Rule.UNKNOWN_OPTION,
          "\""
              + obx.value(VALUE, 1)
              + "\" is not mapped to one of "
              + String.join(", ", entry.options()));
    }
    return option.map(Coded::new);
  }

  /** By our own words if the sender says so, else as the code map says of answer or code. */
  private Optional<String> option(CatalogueEntry entry, Meaning meaning, Hl7Segment obx) {
    var code = obx.value(VALUE, 1);
    var system = obx.value(VALUE, 3);
    boolean ours = Systems.isOurs(system) || Systems.isOurs(obx.value(3, 3));
    return ours && entry.options().contains(code)
        ? Optional.of(code)
        : codes
            .answer(system, code, entry.code())
            .or(() -> meaning.option(code))
            .or(() -> meaning.option(obx.value(VALUE, 2)));
  }

  private static Optional<Text> text(Hl7Segment obx, Content into) {
    var type = obx.value(TYPE);
    var text =
        IntStream.range(0, obx.repetitions(VALUE))
            .mapToObj(i -> obx.value(VALUE, i, 1, 1))
            .collect(Collectors.joining("\n"));
    if (!type.equals("ST") && !type.equals("TX") && !type.equals("FT")) {
      into.fault(
          obx.pointer(VALUE), Rule.WRONG_KIND, "This finding is a text, not of type " + type);
      return Optional.empty();
    }
    return Optional.of(new Text(text));
  }
}
