package org.driftward.ingest.fhir;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CodeSystem;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * Which coding means which finding, and which answer. From the catalogue's LOINC codes, the file
 * {@code fhir/codes.yaml}, and our own code system for what has no LOINC code. Immutable.
 */
final class CodeMap {

  private record Code(String system, String code) {}

  private record FindingRow(String system, String code, String finding) {}

  private record AnswerRow(String system, String code, String finding, String option) {}

  private record File(List<FindingRow> findings, List<AnswerRow> answers, List<Code> panels) {}

  private final Map<Code, CatalogueEntry> findings = new HashMap<>();
  private final Map<Code, String> answers = new HashMap<>();
  private final Set<Code> panels;

  CodeMap(Catalogue catalogue) {
    for (var entry : catalogue.entries()) {
      findings.put(new Code(CodeSystem.FINDING, entry.code()), entry);
      if (entry.loinc() != null) {
        findings.put(new Code(CodeSystem.LOINC, entry.loinc()), entry);
      }
    }
    var file = read();
    for (var row : file.findings()) {
      findings.put(new Code(row.system(), row.code()), require(catalogue, row.finding()));
    }
    for (var row : file.answers()) {
      var entry = require(catalogue, row.finding());
      if (!entry.options().contains(row.option())) {
        throw new IllegalStateException("fhir/codes.yaml: " + row + " names no option");
      }
      answers.put(new Code(row.system(), row.code()), row.option());
    }
    panels = file.panels().stream().collect(Collectors.toUnmodifiableSet());
  }

  Optional<CatalogueEntry> finding(CodeableConcept concept) {
    return concept.getCoding().stream()
        .map(coding -> findings.get(code(coding)))
        .filter(entry -> entry != null)
        .findFirst();
  }

  /** The option that the answer means, if it is one of the entry's. */
  Optional<String> option(CatalogueEntry entry, CodeableConcept answer) {
    return answer.getCoding().stream()
        .map(
            coding ->
                CodeSystem.FINDING.equals(coding.getSystem())
                    ? coding.getCode()
                    : answers.get(code(coding)))
        .filter(option -> option != null && entry.options().contains(option))
        .findFirst();
  }

  boolean isPanel(CodeableConcept concept) {
    return concept.getCoding().stream().anyMatch(coding -> panels.contains(code(coding)));
  }

  private static Code code(Coding coding) {
    return new Code(
        coding.getSystem() == null ? "" : coding.getSystem(),
        coding.getCode() == null ? "" : coding.getCode());
  }

  private static CatalogueEntry require(Catalogue catalogue, String finding) {
    return catalogue
        .find(finding)
        .orElseThrow(
            () -> new IllegalStateException("fhir/codes.yaml: no finding is called " + finding));
  }

  private static File read() {
    try (var in = CodeMap.class.getResourceAsStream("/fhir/codes.yaml")) {
      return new YAMLMapper().readValue(in, File.class);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
