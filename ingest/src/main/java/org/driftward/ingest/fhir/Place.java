package org.driftward.ingest.fhir;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Encounter.EncounterLocationComponent;
import org.hl7.fhir.r4.model.Encounter.EncounterLocationStatus;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;
import org.jspecify.annotations.Nullable;

/**
 * Where an Encounter is now. Ward and bed are the names of the locations whose physical type is
 * ward ({@code wa}) and bed ({@code bd}), codes of HL7's location-physical-type; a location without
 * a type is taken for the ward. A bed may leave the ward to the location that it is part of.
 *
 * @param since when the patient came there, where the Encounter says so
 */
record Place(@Nullable String ward, @Nullable String bed, @Nullable Instant since) {

  private static final String WARD = "wa";
  private static final String BED = "bd";
  private static final int DEEPEST = 8;

  private static final Comparator<EncounterLocationComponent> BY_START =
      Comparator.comparing(
          location -> location.getPeriod().getStart(),
          Comparator.nullsFirst(Comparator.naturalOrder()));

  /** From the locations that hold now; of several, the one entered last, else the last listed. */
  static Place of(List<EncounterLocationComponent> locations, References references) {
    var place = new Place(null, null, null);
    for (var location : holding(locations).stream().sorted(BY_START).toList()) {
      place = place.then(one(location, references));
    }
    return place;
  }

  private static List<EncounterLocationComponent> holding(
      List<EncounterLocationComponent> locations) {
    var active =
        locations.stream().filter(each -> each.getStatus() == EncounterLocationStatus.ACTIVE);
    var found = active.toList();
    return found.isEmpty()
        ? locations.stream()
            .filter(each -> each.getStatus() != EncounterLocationStatus.PLANNED)
            .filter(each -> each.getStatus() != EncounterLocationStatus.RESERVED)
            .toList()
        : found;
  }

  private Place then(Place later) {
    boolean otherWard = later.ward != null && !later.ward.equals(ward);
    return new Place(
        later.ward == null ? ward : later.ward,
        // A bed of the ward that was left is no bed of the new one.
        later.bed != null ? later.bed : otherWard && ward != null ? null : bed,
        later.since == null ? since : later.since);
  }

  private static Place one(EncounterLocationComponent component, References references) {
    var since = component.getPeriod().getStart();
    var first = references.location(component.getLocation());
    var stated = component.getPhysicalType().getCodingFirstRep().getCode();
    String ward = null;
    String bed = null;
    var reference = component.getLocation();
    var location = first;
    for (int depth = 0; depth < DEEPEST && ward == null; depth++) {
      var type = depth == 0 && stated != null ? stated : type(location);
      if (WARD.equals(type)) {
        ward = name(reference, location);
      } else if (BED.equals(type)) {
        bed = name(reference, location);
      }
      if (location.isEmpty() || !location.get().hasPartOf()) {
        break;
      }
      reference = location.get().getPartOf();
      location = references.location(reference);
    }
    return new Place(ward, bed, since == null ? null : since.toInstant());
  }

  private static String type(Optional<Location> location) {
    return location
        .map(found -> found.getPhysicalType().getCodingFirstRep().getCode())
        .orElse(WARD);
  }

  private static @Nullable String name(Reference reference, Optional<Location> location) {
    return location
        .map(found -> found.hasName() ? found.getName() : found.getIdentifierFirstRep().getValue())
        .or(() -> Optional.ofNullable(reference.getDisplay()))
        .orElse(null);
  }
}
