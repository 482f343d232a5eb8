package org.driftward.ingest.core;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.FindingValue.Text;
import org.driftward.ingest.core.Draft.Placed;

/** What the catalogue says about one finding. */
final class FindingRules {

  /** No living patient has 70 Cel; a warm one has 70 to 120 [degF]. Genes et al. 2013. */
  private static final CatalogueEntry.Range FAHRENHEIT =
      new CatalogueEntry.Range(BigDecimal.valueOf(70), BigDecimal.valueOf(120));

  private final Catalogue catalogue;

  FindingRules(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  void check(Placed placed, Faults faults) {
    var key = placed.finding().key();
    var entry = catalogue.find(key.code());
    if (entry.isEmpty()) {
      faults.add(
          placed.pointer() + "/code",
          Rule.UNKNOWN_CODE,
          "\"" + key.code() + "\" is not in the catalogue");
      return;
    }
    checkPlace(entry.get(), key, placed.pointer(), faults);
    checkValue(entry.get(), placed.finding().value(), placed.pointer(), faults);
  }

  private static void checkPlace(
      CatalogueEntry entry, FindingKey key, String pointer, Faults faults) {
    var site = key.site();
    if (site == null && !entry.sites().isEmpty()) {
      faults.add(
          pointer + "/site",
          Rule.MISSING_SITE,
          entry.code() + " needs one of the sites " + String.join(", ", entry.sites()));
    } else if (site != null && !entry.sites().contains(site)) {
      faults.add(
          pointer + "/site",
          Rule.UNKNOWN_SITE,
          "\"" + site + "\" is " + noneOf("site", entry.code(), entry.sites()));
    }
    if (key.side() == null && entry.sided()) {
      faults.add(pointer + "/side", Rule.MISSING_SIDE, entry.code() + " needs left or right");
    } else if (key.side() != null && !entry.sided()) {
      faults.add(pointer + "/side", Rule.UNKNOWN_SIDE, entry.code() + " has no side");
    }
  }

  private static void checkValue(
      CatalogueEntry entry, FindingValue value, String pointer, Faults faults) {
    if (kindOf(value) != entry.kind()) {
      faults.add(
          pointer,
          Rule.WRONG_KIND,
          entry.code() + " is a " + entry.kind().word() + ", not a " + kindOf(value).word());
    } else if (value instanceof Quantity quantity) {
      checkQuantity(entry, quantity, pointer, faults);
    } else if (value instanceof Grade grade) {
      checkRange(entry, BigDecimal.valueOf(grade.grade()), pointer + "/grade", faults);
    } else if (value instanceof Coded coded && !entry.options().contains(coded.code())) {
      faults.add(
          pointer + "/coded",
          Rule.UNKNOWN_OPTION,
          "\"" + coded.code() + "\" is " + noneOf("option", entry.code(), entry.options()));
    } else if (value instanceof Text text) {
      Texts.faultOfNote(text.text())
          .ifPresent(fault -> faults.add(pointer + "/text", Rule.MALFORMED_TEXT, "it " + fault));
    }
  }

  private static void checkQuantity(
      CatalogueEntry entry, Quantity quantity, String pointer, Faults faults) {
    if (quantity.unit().equals(entry.unit())) {
      checkRange(entry, quantity.value(), pointer + "/value", faults);
    } else {
      faults.add(
          pointer + "/unit",
          Rule.WRONG_UNIT,
          "\"" + quantity.unit() + "\" is not the UCUM unit \"" + entry.unit() + "\"");
    }
  }

  private static void checkRange(
      CatalogueEntry entry, BigDecimal value, String pointer, Faults faults) {
    var accepted = entry.accepted();
    if (accepted == null || accepted.holds(value)) {
      return;
    }
    boolean fahrenheit = "Cel".equals(entry.unit()) && FAHRENHEIT.holds(value);
    faults.add(
        pointer,
        Rule.OUT_OF_RANGE,
        value.toPlainString()
            + (" lies outside " + accepted.low().toPlainString())
            + (" to " + accepted.high().toPlainString())
            + (entry.unit() == null ? "" : " " + entry.unit())
            + (fahrenheit ? "; Fahrenheit?" : ""));
  }

  private static Kind kindOf(FindingValue value) {
    if (value instanceof Quantity) {
      return Kind.QUANTITY;
    }
    if (value instanceof Grade) {
      return Kind.GRADE;
    }
    return value instanceof Coded ? Kind.CODED : Kind.TEXT;
  }

  private static String noneOf(String what, String code, List<String> allowed) {
    return allowed.isEmpty()
        ? "no " + what + " of " + code + ", which has none"
        : "no " + what + " of " + code + ": " + String.join(", ", allowed);
  }
}
