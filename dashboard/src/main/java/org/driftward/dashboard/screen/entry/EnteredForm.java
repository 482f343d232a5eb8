package org.driftward.dashboard.screen.entry;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/**
 * What a person filled in, read back without a script's help. Whether it is sound is judged by
 * intake; here only what cannot be read at all is a problem.
 *
 * @param problems in words, each naming its field
 */
public record EnteredForm(List<Finding> findings, List<String> problems) {

  public EnteredForm {
    findings = List.copyOf(findings);
    problems = List.copyOf(problems);
  }

  /**
   * @param fields every field of the form by name; names that are none of ours are passed over
   * @param expected regions that were touched once
   * @param touch what that records where nothing else was entered
   */
  public static EnteredForm read(
      Catalogue catalogue,
      Map<String, String> fields,
      Collection<String> expected,
      OneTouch touch) {
    var values = new LinkedHashMap<FindingKey, FindingValue>();
    var problems = new ArrayList<String>();
    fields.forEach(
        (name, text) -> {
          var key = FieldName.key(name).orElse(null);
          var entry = key == null ? null : catalogue.find(key.code()).orElse(null);
          if (key != null && entry != null && !text.isBlank()) {
            var value = value(entry, text.strip());
            if (value == null) {
              problems.add(entry.name() + ": \"" + text.strip() + "\" is not a number");
            } else {
              values.put(key, value);
            }
          }
        });
    expected.forEach(region -> touch.in(region).forEach(values::putIfAbsent));
    return new EnteredForm(
        values.entrySet().stream()
            .map(each -> new Finding(each.getKey(), each.getValue()))
            .toList(),
        problems);
  }

  private static @Nullable FindingValue value(CatalogueEntry entry, String text) {
    try {
      if (entry.kind() == Kind.QUANTITY) {
        var number = new BigDecimal(text.replace(',', '.'));
        return FindingValue.Quantity.fits(number)
            ? new FindingValue.Quantity(number, String.valueOf(entry.unit()))
            : null;
      }
      if (entry.kind() == Kind.GRADE) {
        return new FindingValue.Grade(Integer.parseInt(text));
      }
    } catch (NumberFormatException e) {
      return null;
    }
    return entry.kind() == Kind.CODED ? new FindingValue.Coded(text) : new FindingValue.Text(text);
  }
}
