package org.driftward.ingest.narrative;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.NarrativeReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every finding of the catalogue can be said, at the least by the name that the catalogue gives.
 */
class NarrativeCoverageTest {

  private static final Map<String, String> UNITS =
      Map.of("{count}", "", "L/min", "litres a minute", "mm[Hg]", "", "Cel", "degrees");

  private static final Set<String> DENIALS = Set.of("none", "absent", "impalpable");

  private static Stream<CatalogueEntry> entries() {
    return Catalogue.shipped().entries().stream().filter(entry -> entry.kind() != Kind.TEXT);
  }

  @ParameterizedTest
  @MethodSource("entries")
  void shouldUnderstandItsNameWithAPlaceAndAValue(CatalogueEntry entry) {
    var place =
        entry.sites().isEmpty()
            ? ""
            : entry.sites().get(entry.sites().size() - 1).replace('-', ' ');
    var text =
        "Urine output 40 ml. %s: %s %s %s."
            .formatted(
                entry.name().toLowerCase(Locale.ROOT).replaceAll("[:,]", " "),
                entry.sided() ? "left" : "",
                entry.region().equals("abdomen") && !place.isEmpty() ? place + " quadrant" : place,
                value(entry));

    var findings = NarrativeReader.shipped().read(text).findings();

    assertThat(findings).as(text).anyMatch(heard -> heard.finding().code().equals(entry.code()));
  }

  private static String value(CatalogueEntry entry) {
    if (entry.kind() == Kind.CODED) {
      return entry.options().stream()
          .filter(option -> !DENIALS.contains(option))
          .findFirst()
          .orElseThrow()
          .replace('-', ' ');
    }
    var number = entry.accepted() == null ? "3" : entry.accepted().high().toPlainString();
    return entry.unit() == null
        ? number
        : number + " " + UNITS.getOrDefault(entry.unit(), entry.unit());
  }
}
