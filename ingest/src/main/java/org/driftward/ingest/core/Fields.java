package org.driftward.ingest.core;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * One JSON object while it is read. Every field asked for is checked; what is wrong is noted with
 * its place, and null is answered instead, so that reading goes on to the next fault.
 *
 * <p>The object is plain Java: maps, lists, strings, numbers, booleans and nulls. A field that is
 * null counts as absent.
 */
final class Fields {

  private final Map<?, ?> object;
  private final String pointer;
  private final Faults faults;

  private Fields(Map<?, ?> object, String pointer, Faults faults) {
    this.object = object;
    this.pointer = pointer;
    this.faults = faults;
  }

  /** The fields of {@code value}, or null if it is no object. */
  static @Nullable Fields of(@Nullable Object value, String pointer, Faults faults) {
    if (value instanceof Map<?, ?> object) {
      return new Fields(object, pointer, faults);
    }
    faults.add(pointer, Rule.WRONG_TYPE, "this is " + typeOf(value) + ", not an object");
    return null;
  }

  String pointer() {
    return pointer;
  }

  String pointer(String field) {
    return pointer + "/" + field;
  }

  boolean has(String field) {
    return object.get(field) != null;
  }

  @Nullable String line(String field) {
    return checked(field, String.class, "a string", Texts::faultOfLine);
  }

  @Nullable String note(String field) {
    return checked(field, String.class, "a string", Texts::faultOfNote);
  }

  /** Notes that the field is missing if it is; for fields that have no default. */
  Fields requires(String... fields) {
    for (var field : fields) {
      if (!has(field)) {
        faults.add(pointer(field), Rule.MISSING_FIELD, "\"" + field + "\" is missing");
      }
    }
    return this;
  }

  <E extends Enum<E> & Word> @Nullable E word(String field, Class<E> type) {
    var word = checked(field, String.class, "a string", text -> Optional.empty());
    if (word == null) {
      return null;
    }
    try {
      return Word.parse(type, word);
    } catch (IllegalArgumentException e) {
      faults.add(pointer(field), Rule.UNKNOWN_WORD, String.valueOf(e.getMessage()));
      return null;
    }
  }

  @Nullable Instant time(String field) {
    return parsed(
        field, "an ISO 8601 time with offset", text -> OffsetDateTime.parse(text).toInstant());
  }

  @Nullable LocalDate date(String field) {
    return parsed(field, "an ISO 8601 date", LocalDate::parse);
  }

  @Nullable BigDecimal number(String field) {
    var number = checked(field, Number.class, "a number", value -> Optional.empty());
    if (number == null) {
      return null;
    }
    var exact = exact(number);
    if (!Quantity.fits(exact)) {
      faults.add(
          pointer(field), Rule.MALFORMED_NUMBER, "this number has more digits than we can keep");
      return null;
    }
    return exact;
  }

  @Nullable Integer whole(String field) {
    var number = number(field);
    if (number == null) {
      return null;
    }
    try {
      return number.intValueExact();
    } catch (ArithmeticException e) {
      faults.add(
          pointer(field), Rule.WRONG_TYPE, number.toPlainString() + " is not a whole number");
      return null;
    }
  }

  @Nullable Fields object(String field) {
    return has(field) ? of(object.get(field), pointer(field), faults) : null;
  }

  /** The objects of a list; those that are none are noted and left out. */
  List<Fields> objects(String field) {
    var list = checked(field, List.class, "an array", value -> Optional.empty());
    var found = new ArrayList<Fields>();
    for (int i = 0; list != null && i < list.size(); i++) {
      var element = of(list.get(i), pointer(field) + "/" + i, faults);
      if (element != null) {
        found.add(element);
      }
    }
    return found;
  }

  private <T> @Nullable T parsed(String field, String what, Function<String, T> parser) {
    var text = checked(field, String.class, "a string", value -> Optional.empty());
    if (text == null) {
      return null;
    }
    try {
      return parser.apply(text);
    } catch (DateTimeParseException e) {
      faults.add(pointer(field), Rule.MALFORMED_TIME, "this is not " + what);
      return null;
    }
  }

  private <T> @Nullable T checked(
      String field, Class<T> type, String typeName, Function<T, Optional<String>> rule) {
    var value = object.get(field);
    if (value == null) {
      return null;
    }
    if (!type.isInstance(value)) {
      faults.add(pointer(field), Rule.WRONG_TYPE, "this is " + typeOf(value) + ", not " + typeName);
      return null;
    }
    T typed = type.cast(value);
    var wrong = rule.apply(typed);
    wrong.ifPresent(
        text -> faults.add(pointer(field), Rule.MALFORMED_TEXT, "\"" + field + "\" " + text));
    return wrong.isPresent() ? null : typed;
  }

  private static BigDecimal exact(Number number) {
    if (number instanceof BigDecimal decimal) {
      return decimal;
    }
    return number instanceof BigInteger whole
        ? new BigDecimal(whole)
        : BigDecimal.valueOf(number.longValue());
  }

  private static String typeOf(@Nullable Object value) {
    if (value == null) {
      return "null";
    }
    if (value instanceof Map) {
      return "an object";
    }
    if (value instanceof List) {
      return "an array";
    }
    if (value instanceof String) {
      return "a string";
    }
    return value instanceof Number ? "a number" : "true or false";
  }
}
