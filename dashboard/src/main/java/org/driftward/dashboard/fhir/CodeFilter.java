package org.driftward.dashboard.fhir;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;

/**
 * The search parameter {@code code} of FHIR R4: {@code system|code} or {@code code}, several with
 * commas. Without any, everything. A component's code is the Observation's for a pressure, so that
 * who asks for the systolic one finds it.
 */
final class CodeFilter {

  private final List<List<String>> choices;

  /**
   * @param parameters each a choice; all of them hold
   */
  CodeFilter(List<String> parameters) {
    this.choices = parameters.stream().map(each -> Arrays.asList(each.split(",", -1))).toList();
  }

  boolean holds(Observation observation) {
    return choices.stream()
        .allMatch(tokens -> tokens.stream().anyMatch(token -> concepts(observation, token)));
  }

  private static boolean concepts(Observation observation, String token) {
    return Stream.concat(
            Stream.of(observation.getCode()),
            observation.getMeta().hasProfile(VitalSign.PRESSURE_PROFILE)
                ? observation.getComponent().stream().map(each -> each.getCode())
                : Stream.empty())
        .anyMatch(concept -> matches(concept, token));
  }

  private static boolean matches(CodeableConcept concept, String token) {
    int bar = token.indexOf('|');
    return concept.getCoding().stream()
        .anyMatch(
            coding ->
                bar < 0
                    ? token.equals(coding.getCode())
                    : coding.getSystem().equals(token.substring(0, bar))
                        && (bar == token.length() - 1
                            || token.substring(bar + 1).equals(coding.getCode())));
  }
}
