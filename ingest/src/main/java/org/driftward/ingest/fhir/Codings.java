package org.driftward.ingest.fhir;

import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.Meaning;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/** Asks the code map in the words of FHIR. A concept is what its first known coding is. */
final class Codings {

  private final Catalogue catalogue;
  private final CodeMap codes;

  Codings(Catalogue catalogue, CodeMap codes) {
    this.catalogue = catalogue;
    this.codes = codes;
  }

  /** A finding of the catalogue, and what else the code says. */
  record Known(CatalogueEntry entry, Meaning meaning) {}

  /**
   * @param feed who sends, because the same code may mean two things in two feeds
   */
  Optional<Known> finding(CodeableConcept concept, String feed) {
    return concept.getCoding().stream()
        .filter(coding -> !code(coding).isBlank())
        .flatMap(coding -> codes.find(new ForeignCode(feed, system(coding), code(coding))).stream())
        .flatMap(
            meaning ->
                catalogue.find(meaning.finding()).map(entry -> new Known(entry, meaning)).stream())
        .findFirst();
  }

  /** The option that the answer means, if it is one of the entry's. */
  Optional<String> option(Known known, CodeableConcept answer) {
    return answer.getCoding().stream()
        .flatMap(coding -> option(known, coding).stream())
        .filter(known.entry().options()::contains)
        .findFirst()
        .or(() -> option(known, answer.getText()));
  }

  private Optional<String> option(Known known, Coding coding) {
    return CodeSystem.FINDING.equals(coding.getSystem())
        ? Optional.of(code(coding))
        : codes
            .answer(system(coding), code(coding), known.entry().code())
            .or(() -> option(known, coding.getCode()))
            .or(() -> option(known, coding.getDisplay()));
  }

  /** The option that an answer in words means. */
  Optional<String> option(Known known, @Nullable String words) {
    return words == null ? Optional.empty() : known.meaning().option(words);
  }

  /** In UCUM: as the sender says, else as the site has settled. Never a guess. */
  Optional<String> unit(Known known, Quantity quantity) {
    if (quantity.getCode() != null && CodeSystem.UCUM.equals(quantity.getSystem())) {
      return Optional.of(quantity.getCode());
    }
    var word = word(quantity);
    return word == null
        ? Optional.ofNullable(known.meaning().unit())
        : known.meaning().ucum(word).or(() -> codes.unit(word));
  }

  boolean isPanel(CodeableConcept concept) {
    return concept.getCoding().stream()
        .anyMatch(coding -> codes.isPanel(system(coding), code(coding)));
  }

  /** The first coding of a concept that is not known, for whoever shall map it. */
  Optional<UnmappedCode> unmapped(CodeableConcept concept, @Nullable Type value, String feed) {
    var unit = value instanceof Quantity quantity ? word(quantity) : null;
    return concept.getCoding().stream()
        .flatMap(
            coding ->
                UnmappedCode.of(
                    feed,
                    system(coding),
                    coding.getCode(),
                    coding.getDisplay() == null ? concept.getText() : coding.getDisplay(),
                    unit)
                    .stream())
        .findFirst();
  }

  private static @Nullable String word(Quantity quantity) {
    return quantity.getCode() == null ? quantity.getUnit() : quantity.getCode();
  }

  private static String system(Coding coding) {
    return coding.getSystem() == null ? "" : coding.getSystem();
  }

  private static String code(Coding coding) {
    return coding.getCode() == null ? "" : coding.getCode();
  }
}
