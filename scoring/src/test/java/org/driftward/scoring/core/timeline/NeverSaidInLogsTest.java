package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.junit.jupiter.api.Test;

/** What may end up in a log or an exception says which record, never what it says of a patient. */
class NeverSaidInLogsTest {

  private static final Assessment FEVER =
      new Assessment(
          "A-1",
          2,
          Assessment.Status.AMENDED,
          "V-1",
          "P-1",
          Stories.START,
          Stories.START,
          Assessment.Source.BEDSIDE,
          "n-1",
          "typing error",
          List.of(Finding.quantity("temperature", "39.9", "Cel")));

  @Test
  void shouldNameAnEntryByItsIdAndRevision() {
    assertThat(Entry.of(FEVER)).hasToString("Entry[A-1 revision 2]");
    var gone = new Entry(new Moment(Stories.START, "A-1"), 3, true, List.of(), null);
    assertThat(gone).hasToString("Entry[A-1 revision 3 retracted]");
  }

  @Test
  void shouldNameFactsByTheirVersion() {
    var known =
        Facts.NONE
            .with(
                new Encounter(
                    "V-1",
                    new Patient("P-1", "Quillfeather, Odalys", LocalDate.of(1951, 4, 2), null),
                    List.of(new Stay("ward-1", "4", Stories.START)),
                    Stories.START,
                    null,
                    null,
                    7))
            .with(plan());
    assertThat(known).hasToString("Facts[version 7, 1 care plans]");
  }

  private static CarePlan plan() {
    return new CarePlan(
        "V-1",
        1,
        2,
        List.of(),
        null,
        null,
        null,
        "chronic lung disease",
        "doctor",
        Stories.START,
        Stories.START.plusSeconds(60));
  }

  @Test
  void shouldSayHowMuchAHeadHasSeenAndHowMuchWasSent() {
    assertThat(Head.EMPTY).hasToString("Head[after 0 assessments]");
    assertThat(new Standing("V-1", Facts.NONE, Head.EMPTY, 3))
        .hasToString("Standing[V-1 sequence 3]");
  }

  @Test
  void shouldNameAnEditionByItsVersionAndTime() {
    assertThat(new Edition("second", Stories.START, Fixtures.judge()))
        .hasToString("Edition[second from 2026-01-05T06:00:00Z]");
  }
}
