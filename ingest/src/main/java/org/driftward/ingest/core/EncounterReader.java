package org.driftward.ingest.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Patient;
import org.jspecify.annotations.Nullable;

/** Reads and checks the body that puts an encounter. Immutable, thread-safe. */
public final class EncounterReader {

  private static final LocalDate EARLIEST_BIRTH = LocalDate.of(1880, 1, 1);

  private final IntakeLimits limits;

  public EncounterReader(IntakeLimits limits) {
    this.limits = limits;
  }

  /**
   * @param put null if and only if there are faults
   */
  public record Result(EncounterChange.@Nullable Put put, List<Fault> faults) {}

  /**
   * @param id of the encounter, from the address of the request; its faults point to nothing
   * @param body plain Java: maps, lists, strings, numbers, booleans and nulls
   * @param now also the time of the move, if this is one
   */
  public Result read(String id, @Nullable Object body, Instant now) {
    var faults = new Faults();
    Texts.faultOfLine(id)
        .ifPresent(text -> faults.add("", Rule.MALFORMED_TEXT, "the encounter's id " + text));
    var fields = Fields.of(body, "", faults);
    if (fields == null) {
      return new Result(null, faults.list());
    }
    fields.requires("patient", "ward", "admitted");
    var patient = patient(fields.object("patient"), now, faults);
    var ward = fields.line("ward");
    var bed = fields.line("bed");
    var admitted = fields.time("admitted");
    var discharged = fields.time("discharged");
    checkPast(admitted, "/admitted", now, faults);
    checkPast(discharged, "/discharged", now, faults);
    if (admitted != null && discharged != null && discharged.isBefore(admitted)) {
      faults.add("/discharged", Rule.DISCHARGED_BEFORE_ADMITTED, "discharged before admitted");
    }
    return faults.isEmpty() && patient != null && ward != null && admitted != null
        ? new Result(
            new EncounterChange.Put(id, patient, ward, bed, now, admitted, discharged), List.of())
        : new Result(null, faults.list());
  }

  private static @Nullable Patient patient(@Nullable Fields fields, Instant now, Faults faults) {
    if (fields == null) {
      return null;
    }
    fields.requires("id");
    var id = fields.line("id");
    var name = fields.line("name");
    var birthDate = fields.date("birthDate");
    var sex = fields.word("sex", Patient.Sex.class);
    // A day of grace, because the date is local and the clock is not.
    var latest = LocalDate.ofInstant(now, ZoneOffset.UTC).plusDays(1);
    if (birthDate != null && (birthDate.isBefore(EARLIEST_BIRTH) || birthDate.isAfter(latest))) {
      faults.add(
          fields.pointer("birthDate"),
          Rule.OUT_OF_RANGE,
          birthDate + " lies outside " + EARLIEST_BIRTH + " to " + latest);
    }
    return id == null ? null : new Patient(id, name, birthDate, sex);
  }

  private void checkPast(@Nullable Instant time, String pointer, Instant now, Faults faults) {
    if (time != null && time.isAfter(now.plus(limits.clockSkew()))) {
      faults.add(pointer, Rule.IN_THE_FUTURE, time + " lies after our clock, " + now);
    }
  }
}
