package org.driftward.ingest.fhir;

import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.PublishedId;
import org.jspecify.annotations.Nullable;

/**
 * What one entry of a Bundle is answered.
 *
 * @param status of HTTP
 * @param location where the first finding of the Observation can be read, or null
 * @param faults why it was refused; or, of an entry that was kept, what nobody has mapped
 */
record EntryAnswer(int status, @Nullable String location, List<Fault> faults) {

  EntryAnswer {
    faults = List.copyOf(faults);
  }

  static EntryAnswer kept(Converted entry) {
    if (entry.assessments.isEmpty()) {
      return new EntryAnswer(200, null, entry.unmapped);
    }
    var first = entry.assessments.get(0);
    var location =
        first.findings().isEmpty()
            ? null
            : "Observation/"
                + PublishedId.finding(first.encounter(), first.id(), first.findings().get(0).key());
    return new EntryAnswer(201, location, entry.unmapped);
  }

  static EntryAnswer refused(List<Fault> faults) {
    return new EntryAnswer(400, null, faults);
  }

  /** It speaks about a ward that the sender does not see; nothing more is said. */
  static EntryAnswer otherWard() {
    return new EntryAnswer(403, null, List.of());
  }

  boolean refused() {
    return status >= 400;
  }
}
