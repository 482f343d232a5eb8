package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.junit.jupiter.api.Test;

class BookkeepingTest {

  private static final Instant ADMITTED = Instant.parse("2026-01-05T08:00:00Z");
  private static final Instant MOVED = Instant.parse("2026-01-05T10:00:00Z");
  private static final Patient PATIENT =
      new Patient("P-1", "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.MALE);

  @Test
  void shouldAdmitAnUnknownEncounterFromItsAdmissionOn() {
    var admitted = Bookkeeping.apply(Optional.empty(), put(PATIENT, "ward-a", "1", MOVED, null));

    assertThat(admitted.version()).isEqualTo(1);
    assertThat(admitted.stays()).containsExactly(new Stay("ward-a", "1", ADMITTED));
  }

  @Test
  void shouldAddAStayForAnotherBed() {
    var moved = Bookkeeping.apply(admitted(), put(PATIENT, "ward-b", "7", MOVED, null));

    assertThat(moved.version()).isEqualTo(2);
    assertThat(moved.stays())
        .containsExactly(new Stay("ward-a", "1", ADMITTED), new Stay("ward-b", "7", MOVED));
  }

  @Test
  void shouldAddAStayForABedThatIsNoLongerAssigned() {
    var moved = Bookkeeping.apply(admitted(), put(PATIENT, "ward-a", null, MOVED, null));

    assertThat(moved.bed()).isNull();
    assertThat(moved.stays()).hasSize(2);
  }

  @Test
  void shouldNotChangeWhatIsPutAsItIs() {
    var known = admitted();

    var same = Bookkeeping.apply(known, put(PATIENT, "ward-a", "1", MOVED, null));

    assertThat(same).isSameAs(known.get());
  }

  @Test
  void shouldDischargeAndReopen() {
    var gone = Bookkeeping.apply(admitted(), put(PATIENT, "ward-a", "1", MOVED, MOVED));
    var back = Bookkeeping.apply(Optional.of(gone), put(PATIENT, "ward-a", "1", MOVED, null));

    assertThat(gone.present()).isFalse();
    assertThat(back.present()).isTrue();
    assertThat(back.version()).isEqualTo(3);
  }

  @Test
  void shouldKeepWhatASourceLeavesOutAboutThePatient() {
    var bare = new Patient("P-1", null, null, null);

    var known = Bookkeeping.apply(admitted(), put(bare, "ward-a", "1", MOVED, null));

    assertThat(known.patient()).isEqualTo(PATIENT);
  }

  @Test
  void shouldLetNoStayBeginBeforeTheOneBeforeIt() {
    var late = ADMITTED.minusSeconds(60);

    var moved = Bookkeeping.apply(admitted(), put(PATIENT, "ward-b", "7", late, null));

    assertThat(moved.current().from()).isEqualTo(ADMITTED);
  }

  @Test
  void shouldNotGiveAnEncounterToAnotherPatient() {
    var other = put(new Patient("P-2", null, null, null), "ward-a", "1", MOVED, null);

    assertThat(Bookkeeping.check(admitted(), other))
        .singleElement()
        .satisfies(fault -> assertThat(fault.pointer()).isEqualTo("/patient/id"));
    assertThat(Bookkeeping.check(Optional.empty(), other)).isEmpty();
  }

  private static Optional<Encounter> admitted() {
    return Optional.of(
        Bookkeeping.apply(Optional.empty(), put(PATIENT, "ward-a", "1", ADMITTED, null)));
  }

  private static Put put(
      Patient patient, String ward, String bed, Instant since, Instant discharged) {
    return new Put("V-1", patient, ward, bed, since, ADMITTED, discharged);
  }
}
