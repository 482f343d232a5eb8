package org.driftward.ingest.core;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.Fault;
import org.jspecify.annotations.Nullable;

/**
 * What the state of an encounter must satisfy, whatever format told it. Pointers name the fields as
 * {@code PUT /api/encounters/{id}} has them. Immutable, thread-safe.
 */
public final class PutRules {

  private final IntakeLimits limits;

  public PutRules(IntakeLimits limits) {
    this.limits = limits;
  }

  /**
   * @param known the newest known state
   * @return every fault; empty if the change can be made
   */
  public List<Fault> check(Optional<Encounter> known, Put put, Instant now) {
    var faults = new Faults();
    line("", "the encounter's id", put.encounter(), faults);
    line("/patient/id", "the patient's id", put.patient().id(), faults);
    line("/patient/name", "the name", put.patient().name(), faults);
    line("/ward", "the ward", put.ward(), faults);
    line("/bed", "the bed", put.bed(), faults);
    past("/admitted", put.admitted(), now, faults);
    past("/discharged", put.discharged(), now, faults);
    past("/since", put.since(), now, faults);
    Bookkeeping.check(known, put).forEach(faults::add);
    return faults.list();
  }

  private static void line(String pointer, String what, @Nullable String text, Faults faults) {
    if (text != null) {
      Texts.faultOfLine(text)
          .ifPresent(wrong -> faults.add(pointer, Rule.MALFORMED_TEXT, what + " " + wrong));
    }
  }

  private void past(String pointer, @Nullable Instant time, Instant now, Faults faults) {
    if (time != null && time.isAfter(now.plus(limits.clockSkew()))) {
      faults.add(pointer, Rule.IN_THE_FUTURE, time + " lies after our clock, " + now);
    }
  }
}
