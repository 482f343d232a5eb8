package org.driftward.ingest.fhir;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.BaseDateTimeType;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/** When an Observation was true. */
final class Moments {

  private Moments() {}

  /**
   * The moment, the end of a period, or the start of one that has no end; as precise as it was
   * written.
   *
   * @return null, with a fault in {@code into}, where no moment is said
   */
  static @Nullable Instant takenAt(@Nullable Type effective, String pointer, Converted into) {
    var moment =
        effective instanceof Period period
            ? period.hasEnd() ? period.getEndElement() : period.getStartElement()
            : effective;
    if (moment instanceof BaseDateTimeType time && time.getValueAsString() != null) {
      try {
        return OffsetDateTime.parse(time.getValueAsString()).toInstant();
      } catch (DateTimeException e) {
        // A day, or a time without a zone: no moment.
      }
    }
    into.fault(
        pointer + "/effectiveDateTime",
        Rule.MALFORMED_TIME,
        "When the observation was true, to the minute and with a time zone, is not said");
    return null;
  }
}
