package org.driftward.dashboard.screen.entry;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.driftward.dashboard.core.StayRecord.Taken;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.entry.EntryField.Kind;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * Makes the fields of catalogue entries.
 *
 * @param before the newest value of each finding
 * @param corrected values of the assessment that is being corrected; empty in a new one
 * @param touch what one touch records
 * @param names people's names by account
 */
record Fields(
    Map<FindingKey, Taken> before,
    Map<FindingKey, FindingValue> corrected,
    OneTouch touch,
    UnaryOperator<String> names,
    Instant now,
    ZoneId zone) {

  /** The longest scale whose every grade has a touch target of its own: pain, 0 to 10. */
  private static final int LONGEST_SCALE = 11;

  EntryField field(CatalogueEntry entry, FindingKey key, String label, String spoken) {
    var kind = kind(entry);
    var last = before.get(key);
    var value = corrected.get(key);
    var accepted = entry.accepted();
    var expected = entry.expected();
    return new EntryField(
        FieldName.of(key),
        kind,
        label,
        spoken,
        Wording.unit(entry.unit()),
        entry.unit() == null ? "" : entry.unit(),
        accepted == null ? "" : Wording.number(accepted.low()),
        accepted == null ? "" : Wording.number(accepted.high()),
        expected == null ? "" : Wording.number(expected.low()),
        expected == null ? "" : Wording.number(expected.high()),
        options(entry, kind, last, value),
        touch.value(entry, key).map(FindingValue::plain).orElse(""),
        last == null ? "" : words(entry, last),
        value == null ? "" : value.plain(),
        isStep(entry, kind));
  }

  /** The numbers of a usual set, and of the vital signs also the words: none is passed over. */
  private static boolean isStep(CatalogueEntry entry, Kind kind) {
    return (kind == Kind.VALUE && entry.expected() != null && entry.formula() == null)
        || (kind == Kind.CODED && entry.region().equals(Regions.VITAL_SIGNS));
  }

  private static Kind kind(CatalogueEntry entry) {
    return switch (entry.kind()) {
      case QUANTITY -> Kind.VALUE;
      case CODED -> Kind.CODED;
      case TEXT -> Kind.TEXT;
      case GRADE -> steps(entry) > LONGEST_SCALE ? Kind.GRADE_NUMBER : Kind.GRADE;
    };
  }

  private static int steps(CatalogueEntry entry) {
    Range scale = entry.accepted();
    return scale == null ? 0 : scale.high().intValueExact() - scale.low().intValueExact() + 1;
  }

  private static List<EntryOption> options(
      CatalogueEntry entry, Kind kind, @Nullable Taken last, @Nullable FindingValue value) {
    var options = new ArrayList<EntryOption>();
    if (kind == Kind.CODED) {
      for (String code : entry.options()) {
        var option = new FindingValue.Coded(code);
        options.add(
            new EntryOption(
                code,
                code.replace('-', ' '),
                "",
                entry.normal().contains(code),
                last != null && last.value().equals(option),
                option.equals(value)));
      }
    } else if (kind == Kind.GRADE && entry.accepted() != null) {
      int low = entry.accepted().low().intValueExact();
      for (int grade = low; grade < low + steps(entry); grade++) {
        var option = new FindingValue.Grade(grade);
        var expected = entry.expected();
        options.add(
            new EntryOption(
                option.plain(),
                option.plain(),
                entry.scale().getOrDefault(grade, ""),
                expected != null && expected.holds(BigDecimal.valueOf(grade)),
                last != null && last.value().equals(option),
                option.equals(value)));
      }
    }
    return options;
  }

  /** {@code 18, 03:10 by Ines Varga}. */
  private String words(CatalogueEntry entry, Taken last) {
    var value = Wording.value(Scalar.of(last.value()), entry.unit());
    return value + ", " + Wording.time(last.takenAt(), now, zone) + " by " + names.apply(last.by());
  }
}
