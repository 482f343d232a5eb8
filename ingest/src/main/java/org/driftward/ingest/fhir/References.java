package org.driftward.ingest.fhir;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;

/**
 * Resolves the references of one request: to another entry of the Bundle by its full URL or its
 * relative address, or to something that was sent before by its identifier.
 */
final class References {

  private final Map<String, Resource> byAddress = new HashMap<>();

  static References of(Bundle bundle) {
    var references = new References();
    for (var entry : bundle.getEntry()) {
      references.add(entry.getFullUrl(), entry.getResource());
    }
    return references;
  }

  static References none() {
    return new References();
  }

  private void add(@Nullable String fullUrl, @Nullable Resource resource) {
    if (resource == null) {
      return;
    }
    if (fullUrl != null) {
      byAddress.put(fullUrl, resource);
    }
    var id = resource.getIdElement().getIdPart();
    if (id != null) {
      byAddress.put(resource.fhirType() + "/" + id, resource);
    }
  }

  /** The hospital's number of the stay that is meant. */
  Optional<String> encounter(Reference reference) {
    return number(reference, "Encounter");
  }

  /** The hospital's number of the patient that is meant. */
  Optional<String> patient(Reference reference) {
    return number(reference, "Patient");
  }

  Optional<Patient> patientResource(Reference reference) {
    return resolve(reference).filter(Patient.class::isInstance).map(Patient.class::cast);
  }

  Optional<Location> location(Reference reference) {
    return resolve(reference).filter(Location.class::isInstance).map(Location.class::cast);
  }

  static Optional<String> number(Encounter encounter) {
    return firstValue(encounter.getIdentifier())
        .or(() -> Optional.ofNullable(encounter.getIdElement().getIdPart()));
  }

  static Optional<String> number(Patient patient) {
    return firstValue(patient.getIdentifier())
        .or(() -> Optional.ofNullable(patient.getIdElement().getIdPart()));
  }

  private Optional<String> number(Reference reference, String type) {
    var resource = resolve(reference);
    if (resource.isPresent()) {
      return resource.get() instanceof Encounter encounter
          ? number(encounter)
          : resource.get() instanceof Patient patient ? number(patient) : Optional.empty();
    }
    if (reference.hasIdentifier() && reference.getIdentifier().hasValue()) {
      return Optional.of(reference.getIdentifier().getValue());
    }
    var searched = searched(reference, type);
    if (searched.isPresent()) {
      return searched;
    }
    var address = reference.getReferenceElement();
    return type.equals(address.getResourceType())
        ? Optional.ofNullable(address.getIdPart())
        : Optional.empty();
  }

  /** The identifier of a conditional reference, {@code Patient?identifier=system|value}. */
  private static Optional<String> searched(Reference reference, String type) {
    var address = reference.getReference();
    var start = type + "?identifier=";
    return address != null && address.startsWith(start) && address.indexOf('&') < 0
        ? Optional.of(address.substring(Math.max(start.length(), address.lastIndexOf('|') + 1)))
            .filter(value -> !value.isEmpty())
        : Optional.empty();
  }

  private Optional<Resource> resolve(Reference reference) {
    var address = reference.getReference();
    if (address == null) {
      return Optional.empty();
    }
    var direct = byAddress.get(address);
    if (direct != null) {
      return Optional.of(direct);
    }
    var parts = reference.getReferenceElement();
    return Optional.ofNullable(byAddress.get(parts.getResourceType() + "/" + parts.getIdPart()));
  }

  private static Optional<String> firstValue(java.util.List<Identifier> identifiers) {
    return identifiers.stream()
        .filter(Identifier::hasValue)
        .filter(identifier -> identifier.getUse() != Identifier.IdentifierUse.OLD)
        .map(Identifier::getValue)
        .findFirst();
  }
}
