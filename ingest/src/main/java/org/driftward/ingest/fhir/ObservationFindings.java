package org.driftward.ingest.fhir;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/** The findings of one Observation: its own and those of its components. Thread-safe. */
final class ObservationFindings {

  /** Why an Observation holds no finding. */
  enum Emptiness {
    /** Nobody has mapped what it is about. */
    UNKNOWN,
    /** It says why there is no value. */
    NOT_MEASURED,
    /** It only holds others together. */
    GROUPS,
    /** It has no value and does not say why. */
    UNSAID;

    /** Whether it takes back the value that was sent before under the same identity. */
    boolean takesBack(Status status) {
      return this == NOT_MEASURED || (this == UNSAID && status == Status.RETRACTED);
    }
  }

  private final Codings codings;
  private final FindingReader values;

  ObservationFindings(Codings codings) {
    this.codings = codings;
    this.values = new FindingReader(codings);
  }

  List<Finding> read(Observation observation, String feed, String pointer, Converted into) {
    var found = new ArrayList<Finding>();
    if (!codings.isPanel(observation.getCode())) {
      finding(observation.getCode(), observation.getValue(), observation, feed, pointer, into)
          .ifPresent(found::add);
    }
    var components = observation.getComponent();
    for (int i = 0; i < components.size(); i++) {
      var component = components.get(i);
      finding(
              component.getCode(),
              component.getValue(),
              observation,
              feed,
              pointer + "/component/" + i,
              into)
          .ifPresent(finding -> add(finding, found, pointer, into));
    }
    return found;
  }

  private static void add(Finding finding, List<Finding> found, String pointer, Converted into) {
    if (found.stream().anyMatch(other -> other.key().equals(finding.key()))) {
      into.fault(pointer, Rule.DUPLICATE_FINDING, "The same finding twice in one Observation");
    } else {
      found.add(finding);
    }
  }

  /** Only of an Observation in which no finding was found. */
  Emptiness emptiness(Observation observation, String feed) {
    if (observation.hasHasMember()) {
      return Emptiness.GROUPS;
    }
    boolean panel = codings.isPanel(observation.getCode());
    boolean ours = codings.finding(observation.getCode(), feed).isPresent();
    boolean oursInside =
        observation.getComponent().stream()
            .map(ObservationComponentComponent::getCode)
            .anyMatch(code -> codings.finding(code, feed).isPresent());
    if (!ours && !oursInside) {
      return panel && !observation.hasComponent() ? Emptiness.GROUPS : Emptiness.UNKNOWN;
    }
    boolean said =
        observation.hasDataAbsentReason()
            || observation.getComponent().stream()
                .anyMatch(ObservationComponentComponent::hasDataAbsentReason);
    return said ? Emptiness.NOT_MEASURED : Emptiness.UNSAID;
  }

  /** Of an Observation without a value, whose code nobody has mapped. */
  void unmapped(Observation observation, String feed, String pointer, Converted into) {
    into.unmapped(pointer + "/code", codings.unmapped(observation.getCode(), null, feed));
  }

  static boolean hasAnyValue(Observation observation) {
    return observation.hasValue()
        || observation.getComponent().stream().anyMatch(ObservationComponentComponent::hasValue);
  }

  /** Empty where nothing was measured (a data-absent reason) or the code is not ours. */
  private Optional<Finding> finding(
      CodeableConcept code,
      @Nullable Type value,
      Observation observation,
      String feed,
      String pointer,
      Converted into) {
    var known = codings.finding(code, feed);
    if (value == null) {
      return Optional.empty();
    }
    if (known.isEmpty()) {
      into.unmapped(pointer + "/code", codings.unmapped(code, value, feed));
      return Optional.empty();
    }
    var key = BodySite.key(known.get(), observation, pointer, into);
    return key.flatMap(found -> values.read(known.get(), found, value, pointer, into));
  }
}
