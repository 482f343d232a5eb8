package org.driftward.deploy.whole;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/**
 * What must survive every way in and out: what, where, how much, when.
 *
 * @param site and side, or empty texts
 * @param value without trailing zeros
 * @param unit or an empty text
 * @param takenAt ISO 8601 in UTC
 */
record Fact(String code, String site, String side, String value, String unit, String takenAt) {

  static Fact of(Finding finding, String takenAt) {
    var key = finding.key();
    return new Fact(
        key.code(),
        key.site() == null ? "" : key.site(),
        key.side() == null ? "" : key.side().word(),
        finding.value().plain(),
        finding.value() instanceof FindingValue.Quantity quantity ? quantity.unit() : "",
        takenAt);
  }

  /** The facts that a published Observation states; none for a score. */
  static List<Fact> of(Observation observation) {
    var facts = new ArrayList<Fact>();
    add(observation, observation.getCode(), observation.getValue(), facts);
    observation
        .getComponent()
        .forEach(each -> add(observation, each.getCode(), each.getValue(), facts));
    return coded(observation.getCode(), CodeSystem.SCORE).isEmpty() ? facts : List.of();
  }

  private static void add(
      Observation observation, CodeableConcept code, @Nullable Type value, List<Fact> facts) {
    if (value == null) {
      return;
    }
    facts.add(
        new Fact(
            coded(code, CodeSystem.FINDING),
            coded(observation.getBodySite(), CodeSystem.SITE),
            coded(observation.getBodySite(), CodeSystem.SIDE),
            plain(value),
            value instanceof Quantity quantity ? quantity.getCode() : "",
            observation.getEffectiveDateTimeType().getValueAsString()));
  }

  private static String plain(Type value) {
    if (value instanceof Quantity quantity) {
      return plain(quantity.getValue());
    }
    return value instanceof CodeableConcept concept
        ? coded(concept, CodeSystem.FINDING)
        : value.primitiveValue();
  }

  static String plain(BigDecimal number) {
    var stripped = number.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }

  private static String coded(CodeableConcept concept, String system) {
    return concept.getCoding().stream()
        .filter(coding -> system.equals(coding.getSystem()))
        .map(Coding::getCode)
        .findFirst()
        .orElse("");
  }
}
