package org.driftward.ingest.fhir;

import java.util.Optional;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.fhir.Codings.Known;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;

/**
 * Where on the body. Written as codings of {@code Observation.bodySite}: our own systems for the
 * catalogue's site and for the side. What the code says itself goes before; what has neither needs
 * no body site, and one that is there says nothing new.
 */
final class BodySite {

  private BodySite() {}

  /** The key of the finding, or empty with a fault in {@code into}. */
  static Optional<FindingKey> key(
      Known known, Observation observation, String pointer, Converted into) {
    var entry = known.entry();
    var meaning = known.meaning();
    var site = Optional.ofNullable(meaning.site()).or(() -> coded(observation, CodeSystem.SITE));
    var side =
        Optional.ofNullable(meaning.side())
            .map(Side::word)
            .or(() -> coded(observation, CodeSystem.SIDE));
    if (!entry.sites().isEmpty() && !site.map(entry.sites()::contains).orElse(false)) {
      into.fault(
          pointer + "/bodySite", Rule.UNKNOWN_SITE, "A site of " + entry.sites() + " is needed");
      return Optional.empty();
    }
    if (!entry.sided()) {
      return Optional.of(
          new FindingKey(entry.code(), entry.sites().isEmpty() ? null : site.get(), null));
    }
    try {
      return Optional.of(
          new FindingKey(
              entry.code(),
              entry.sites().isEmpty() ? null : site.get(),
              Word.parse(Side.class, side.orElse(""))));
    } catch (IllegalArgumentException e) {
      into.fault(pointer + "/bodySite", Rule.UNKNOWN_SIDE, "The side, left or right, is needed");
      return Optional.empty();
    }
  }

  private static Optional<String> coded(Observation observation, String system) {
    return observation.getBodySite().getCoding().stream()
        .filter(coding -> system.equals(coding.getSystem()))
        .map(Coding::getCode)
        .filter(code -> code != null)
        .findFirst();
  }
}
