package org.driftward.ingest.core;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;

/** An encounter while something happens to it. Used by one thread. */
final class NextEncounter {

  Patient patient;
  List<Stay> stays;
  Instant admitted;
  @Nullable Instant discharged;
  @Nullable String mergedInto;
  @Nullable Instant cancelled;
  private final Encounter known;

  NextEncounter(Encounter known) {
    this.known = known;
    this.patient = known.patient();
    this.stays = known.stays();
    this.admitted = known.admitted();
    this.discharged = known.discharged();
    this.mergedInto = known.mergedInto();
    this.cancelled = known.cancelled();
  }

  /** The known one itself if nothing changed; else one version higher. */
  Encounter encounter() {
    var same = withVersion(known.version());
    return same.equals(known) ? known : withVersion(known.version() + 1);
  }

  private Encounter withVersion(long version) {
    return new Encounter(
        known.id(), patient, stays, admitted, discharged, mergedInto, cancelled, version);
  }
}
