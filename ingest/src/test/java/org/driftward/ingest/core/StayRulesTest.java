package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tolerances: engineering choice. Every one is tested at its edge and one millisecond past it. */
class StayRulesTest {

  private static final String RATE = "{\"code\":\"heart-rate\",\"value\":80,\"unit\":\"/min\"}";

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "2026-01-05T12:05:00Z,     -",
        "2026-01-05T12:05:00.001Z, /takenAt in-the-future",
        "2026-01-04T08:00:00Z,     -",
        "2026-01-04T07:59:59.999Z, /takenAt before-admission",
      })
  void shouldTakeTimesWithinTheStayAndTheToleranceOfClocks(String takenAt, String expected) {
    var broken = assessment("V-1", "P-1", takenAt, "2026-01-05T12:05:00Z").broken();

    assertThat(broken)
        .isEqualTo(expected == null ? java.util.List.of() : java.util.List.of(expected));
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "2026-01-05T09:00:00Z,     -",
        "2026-01-05T10:05:00Z,     -",
        "2026-01-05T10:05:00.001Z, /takenAt after-discharge",
      })
  void shouldTakeLateRecordsOfTimesBeforeDischarge(String takenAt, String expected) {
    var broken = assessment("V-2", "P-2", takenAt, "2026-01-05T12:00:00Z").broken();

    assertThat(broken)
        .isEqualTo(expected == null ? java.util.List.of() : java.util.List.of(expected));
  }

  @Test
  void shouldRefuseAnAssessmentRecordedBeforeItWasTaken() {
    var broken =
        assessment("V-1", "P-1", "2026-01-05T11:00:00Z", "2026-01-05T10:54:59.999Z").broken();

    assertThat(broken).containsExactly("/recordedAt recorded-before-taken");
  }

  @Test
  void shouldRefuseARecordingInTheFuture() {
    var broken =
        assessment("V-1", "P-1", "2026-01-05T11:00:00Z", "2026-01-05T12:05:00.001Z").broken();

    assertThat(broken).containsExactly("/recordedAt in-the-future");
  }

  @Test
  void shouldRefuseAnUnknownEncounter() {
    assertThat(assessment("V-9", "P-1", "2026-01-05T11:00:00Z", "2026-01-05T12:00:00Z").broken())
        .containsExactly("/encounter unknown-encounter");
  }

  @Test
  void shouldRefuseAnotherPatientsEncounter() {
    assertThat(assessment("V-1", "P-2", "2026-01-05T11:00:00Z", "2026-01-05T12:00:00Z").broken())
        .containsExactly("/patient other-patient");
  }

  @Test
  void shouldNameTheEncounterThatOneWasMergedInto() {
    var faults = assessment("V-3", "P-3", "2026-01-05T11:00:00Z", "2026-01-05T12:00:00Z").faults();

    assertThat(faults)
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.rule()).isEqualTo("merged-encounter");
              assertThat(fault.detail()).contains("V-1");
            });
  }

  private static Request assessment(
      String encounter, String patient, String takenAt, String recordedAt) {
    return Request.of(
        """
        {"id":"A-1","encounter":"%s","patient":"%s","takenAt":"%s","recordedAt":"%s",
         "findings":[%s]}
        """
            .formatted(encounter, patient, takenAt, recordedAt, RATE));
  }
}
