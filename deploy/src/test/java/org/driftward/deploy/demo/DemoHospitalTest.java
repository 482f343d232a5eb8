package org.driftward.deploy.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.junit.jupiter.api.Test;

class DemoHospitalTest {

  private static final Instant BEGAN = Instant.parse("2031-03-02T20:00:00Z");

  @Test
  void shouldHoldFortyPatientsEachInABedOfTheirOwn() {
    var patients = DemoHospital.patients();
    assertThat(patients).hasSize(40);
    assertThat(patients).extracting(p -> p.ward() + p.bed()).doesNotHaveDuplicates();
    assertThat(patients).extracting(DemoPatient::encounter).doesNotHaveDuplicates();
    assertThat(patients).extracting(p -> p.patient().id()).doesNotHaveDuplicates();
    assertThat(patients).extracting(p -> p.patient().name()).doesNotHaveDuplicates();
  }

  @Test
  void shouldOnlyRecordWhatTheCatalogueKnowsAndAccepts() {
    assertThat(twoDays().flatMap(set -> set.findings().stream()))
        .allSatisfy(DemoHospitalTest::isAccepted);
  }

  @Test
  void shouldGiveEverySetAnIdOfItsOwn() {
    assertThat(twoDays().map(Assessment::id).toList()).doesNotHaveDuplicates();
  }

  @Test
  void shouldRecordTheSameWhenAskedAgain() {
    assertThat(twoDays().toList()).isEqualTo(twoDays().toList());
  }

  @Test
  void shouldHaveSomebodyAlarmingWithinTheFirstTwentyMinutes() {
    var sedated = patientIn("heron", "A2");
    var sets = sedated.assessments(BEGAN, BEGAN, BEGAN.plus(Duration.ofMinutes(20)));
    assertThat(sets)
        .anySatisfy(
            set -> assertThat(set.findings()).contains(Finding.coded("consciousness", "voice")));
  }

  private static java.util.stream.Stream<Assessment> twoDays() {
    return DemoHospital.patients().stream()
        .map(
            patient ->
                patient.assessments(
                    BEGAN, BEGAN.minus(Duration.ofDays(2)), BEGAN.plus(Duration.ofDays(2))))
        .flatMap(List::stream);
  }

  private static DemoPatient patientIn(String ward, String bed) {
    return DemoHospital.patients().stream()
        .filter(patient -> patient.ward().equals(ward) && patient.bed().equals(bed))
        .findFirst()
        .orElseThrow();
  }

  private static void isAccepted(Finding finding) {
    var entry = Catalogue.shipped().find(finding.code()).orElseThrow();
    if (finding.value() instanceof Quantity quantity) {
      assertThat(quantity.unit()).isEqualTo(entry.unit());
      assertThat(entry.accepted().holds(quantity.value())).isTrue();
    }
    if (!entry.sites().isEmpty()) {
      assertThat(entry.sites()).contains(finding.key().site());
    }
    assertThat(finding.key().side() != null).isEqualTo(entry.sided());
  }
}
