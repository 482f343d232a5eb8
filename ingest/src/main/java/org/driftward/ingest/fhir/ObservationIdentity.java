package org.driftward.ingest.fhir;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.hl7.fhir.r4.model.Observation;

/**
 * Which assessment an Observation is, and which revision of it, from the Observation alone: a retry
 * is the same assessment, whoever answers it.
 */
final class ObservationIdentity {

  private static final Instant REVISIONS_BEGIN = Instant.parse("2025-01-01T00:00:00Z");

  private ObservationIdentity() {}

  /**
   * By business identifier; without one, by the sender's resource id; without that, by what makes
   * two observations the same: stay, time, code and site.
   */
  static String id(Observation observation, String encounter, Instant takenAt) {
    var identifier = Condition.deciding(observation.getIdentifier());
    if (identifier.isPresent()) {
      return named("identifier", identifier.get().getSystem() + "|" + identifier.get().getValue());
    }
    var id = observation.getIdElement().getIdPart();
    if (id != null && !id.startsWith("urn:")) {
      return named("id", encounter + "|" + id);
    }
    var what = new StringBuilder(encounter).append('|').append(takenAt);
    observation
        .getCode()
        .getCoding()
        .forEach(c -> what.append('|').append(c.getSystem()).append('|').append(c.getCode()));
    observation.getBodySite().getCoding().forEach(c -> what.append('|').append(c.getCode()));
    return named("content", what.toString());
  }

  /**
   * By the version the sender counts. Where none is counted, four times the seconds from the year
   * 2025 to when it was issued, plus the order that the statuses have by themselves; so a status
   * that changes without a new time of issue still wins.
   */
  static int revision(Observation observation) {
    var version = observation.getMeta().getVersionId();
    if (version != null && version.matches("[1-9][0-9]{0,8}")) {
      // Twice, so that the first version we hear of may already be a correction, which is never 1.
      return 2 * Integer.parseInt(version) - (order(observation) == 1 ? 1 : 0);
    }
    long seconds =
        observation.getIssued() != null
            ? Duration.between(REVISIONS_BEGIN, observation.getIssued().toInstant()).toSeconds()
            : 0;
    return (int) Math.min(Integer.MAX_VALUE, 4 * Math.max(0, seconds) + order(observation));
  }

  private static int order(Observation observation) {
    var status = observation.getStatus();
    if (status == null) {
      return 1;
    }
    return switch (status) {
      case AMENDED, CORRECTED -> 2;
      case ENTEREDINERROR, CANCELLED -> 3;
      default -> 1;
    };
  }

  private static String named(String kind, String name) {
    return "fhir-" + UUID.nameUUIDFromBytes((kind + "|" + name).getBytes(StandardCharsets.UTF_8));
  }
}
