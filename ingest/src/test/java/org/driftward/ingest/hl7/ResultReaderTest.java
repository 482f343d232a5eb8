package org.driftward.ingest.hl7;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.mapping.ShippedCodes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * OBX by HL7 v2.5.1 chapter 7.4.2 and its tables 0085 (status) and 0125 (value type); data types by
 * chapter 2A. The messages are our own.
 */
class ResultReaderTest {

  private static final String AT = "20260105115000+0000";

  @Test
  void shouldReadAResult() {
    var content = read(Text.heartRate("88"));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments)
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.status()).isEqualTo(Assessment.Status.FINAL);
              assertThat(one.encounter()).isEqualTo("V-1");
              assertThat(one.patient()).isEqualTo("P-V-1");
              assertThat(one.takenAt()).isEqualTo(Instant.parse("2026-01-05T11:50:00Z"));
              assertThat(one.recordedAt()).isEqualTo(Instant.parse("2026-01-05T11:55:00Z"));
              assertThat(one.source()).isEqualTo(Assessment.Source.HL7);
              assertThat(one.by()).isEqualTo("hl7:GATEWAY|NORTH");
              assertThat(one.findings())
                  .containsExactly(Finding.quantity("heart-rate", "88", "/min"));
            });
  }

  /** 98.6 [degF] is 37 Cel: NIST SP 811; 1 mm[Hg] is 133.322 Pa: UCUM table of m[Hg]. */
  @ParameterizedTest
  @CsvSource({
    "NM, 8867-4, 88, bpm, heart-rate, 88, /min",
    "ST, 8867-4, 88, /min, heart-rate, 88, /min",
    "SN, 8867-4, ^88, /min, heart-rate, 88, /min",
    "SN, 8867-4, =^88, /min, heart-rate, 88, /min",
    "NM, 8310-5, 98.6, degF, temperature, 37, Cel",
    "NM, 8310-5, +37.2, cel, temperature, 37.2, Cel",
    "NM, 8480-6, 16, kPa^^UCUM, systolic-pressure, 120.010201, mm[Hg]",
    "NM, 8480-6, 120, mmHg, systolic-pressure, 120, mm[Hg]",
    "NM, 59408-5, 96, %, oxygen-saturation, 96, %",
  })
  void shouldReadQuantities(
      String type, String code, String value, String unit, String finding, String ours, String in) {
    var content = read(Text.obx(type, code + "^^LN", value, unit, "F", AT));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments.get(0).findings())
        .containsExactly(Finding.quantity(finding, ours, in));
  }

  @ParameterizedTest
  @CsvSource({
    "NM, 88, '', wrong-unit, 6",
    "NM, 88, furlong, wrong-unit, 6",
    "NM, 88, mm[Hg], wrong-unit, 6",
    "NM, 88, bpm^^UCUM, wrong-unit, 6",
    "NM, 8.8e1, /min, wrong-kind, 5",
    "NM, eighty, /min, wrong-kind, 5",
    "NM, 88~89, /min, wrong-kind, 5",
    "SN, <^88, /min, inexact-value, 5",
    "SN, ^88^-^90, /min, inexact-value, 5",
    "ST, <88, /min, inexact-value, 5",
    "ED, ^88, /min, wrong-kind, 5",
    "NM, '', /min, missing-field, 5",
    "NM, '\"\"', /min, missing-field, 5",
  })
  void shouldRefuseWhatIsNoQuantity(
      String type, String value, String unit, String rule, int field) {
    var content = read(Text.obx(type, "8867-4^^LN", value, unit, "F", AT));

    assertThat(content.assessments).isEmpty();
    assertThat(content.faults)
        .extracting(Fault::rule, Fault::pointer)
        .containsExactly(tuple(rule, "/OBX/1/" + field));
  }

  /** The letters A, C, V, P and U of ACVPU: Royal College of Physicians, NEWS2, 2017. */
  @ParameterizedTest
  @CsvSource({
    "CWE, C^New confusion^L, confused",
    "CE, v, voice",
    "CF, P, pain",
    "ST, Alert, alert",
    "CWE, 7^Unresponsive^L, unresponsive",
  })
  void shouldReadCodedAnswersByTheMap(String type, String value, String option) {
    var content = read(Text.obx(type, "67775-7^^LN", value, "", "F", AT));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments.get(0).findings())
        .containsExactly(Finding.coded("consciousness", option));
  }

  /** Concepts of SNOMED CT as in the shipped file; the name of the system by HL7 table 0396. */
  @Test
  void shouldReadAnAnswerThatHasACodeOfItsOwn() {
    var content =
        read(Text.obx("CWE", "67775-7^^LN", "450847001^Responds to pain^SCT", "", "F", AT));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments.get(0).findings())
        .containsExactly(Finding.coded("consciousness", "pain"));
  }

  @Test
  void shouldRefuseAnAnswerThatNobodyHasMapped() {
    var content = read(Text.obx("CWE", "67775-7^^LN", "SLEEPY", "", "F", AT));

    assertThat(content.faults).extracting(Fault::rule).containsExactly("unknown-option");
  }

  @Test
  void shouldReadSiteAndSideOfOurOwnCodes() {
    var obx =
        Text.obx("NM", "pulse-amplitude^^99DRIFTWARD", "1", "", "F", AT)
            + "||||||dorsalis-pedis^^99DRIFTWARD~left^^99DRIFTWARD";

    var content = read(obx);

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments.get(0).findings())
        .containsExactly(
            new Finding(
                new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT),
                new FindingValue.Grade(1)));
  }

  @ParameterizedTest
  @CsvSource({
    "F, final",
    "P, final",
    "R, final",
    "S, final",
    "C, amended",
    "D, retracted",
    "W, retracted"
  })
  void shouldReadTheStatus(String letter, String status) {
    var content = read(Text.obx("NM", "8867-4^^LN", "88", "/min", letter, AT));

    assertThat(content.assessments)
        .singleElement()
        .satisfies(one -> assertThat(one.status().word()).isEqualTo(status));
  }

  @ParameterizedTest
  @ValueSource(strings = {"I", "N", "O", "X"})
  void shouldPassOverWhatHasNoResult(String letter) {
    var content = read(Text.obx("NM", "8867-4^^LN", "", "", letter, ""));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "f", "Z", "FC"})
  void shouldRefuseAStatusOfNoTable(String letter) {
    var content = read(Text.obx("NM", "8867-4^^LN", "88", "/min", letter, AT));

    assertThat(content.faults).extracting(Fault::rule).containsExactly("unusable-status");
  }

  @Test
  void shouldTakeTheTimeOfTheOrderWhereTheResultHasNone() {
    var content = read(Text.obx("NM", "8867-4^^LN", "88", "/min", "F", ""));

    assertThat(content.assessments.get(0).takenAt())
        .isEqualTo(Instant.parse("2026-01-05T11:50:00Z"));
  }

  @Test
  void shouldBeTheSameAssessmentWhenRepeatedAndALaterRevisionWhenCorrected() {
    var first = read(Text.heartRate("88")).assessments.get(0);
    var again = read(Text.heartRate("88")).assessments.get(0);
    var corrected =
        read(Text.obx("NM", "8867-4^Heart rate^LN", "98", "/min", "C", AT)).assessments.get(0);
    var deleted = read(Text.obx("NM", "8867-4^Heart rate^LN", "", "", "D", AT)).assessments.get(0);

    assertThat(again).isEqualTo(first);
    assertThat(List.of(corrected.id(), deleted.id())).containsOnly(first.id());
    assertThat(corrected.revision()).isGreaterThan(first.revision());
    assertThat(deleted.revision()).isGreaterThan(corrected.revision());
  }

  @Test
  void shouldKeepReadingsApartThatADeviceSendsUnderOneOrder() {
    var content =
        read(
            Text.obx("NM", "8867-4^^LN", "88", "/min", "F", AT),
            Text.obx("NM", "8867-4^^LN", "90", "/min", "F", "20260105115100+0000"));

    assertThat(content.assessments).extracting(Assessment::id).doesNotHaveDuplicates().hasSize(2);
  }

  @Test
  void shouldReportWhatIsNotMappedAndReadTheRest() {
    var content =
        read(Text.obx("NM", "WOBBLE^Wobble index^L", "7", "wob", "F", AT), Text.heartRate("88"));

    assertThat(content.faults).isEmpty();
    assertThat(content.assessments).hasSize(1);
    assertThat(content.unmapped).extracting(Fault::pointer).containsExactly("/OBX/1/3");
    assertThat(content.codes)
        .containsExactly(
            new UnmappedCode(
                new ForeignCode("hl7:GATEWAY|NORTH", "L", "WOBBLE"), "Wobble index", "wob"));
  }

  private Content read(String... obx) {
    var catalogue = Catalogue.shipped();
    var settings = new SiteSettings(Optional.empty(), "P", Optional.empty(), Duration.ZERO);
    var reader = new ResultReader(catalogue, ShippedCodes.MAP, new PatientReader(settings));
    var content = new Content();
    try {
      var message =
          new Hl7Format().read(Text.results("M-1", "V-1", obx).getBytes(StandardCharsets.UTF_8));
      reader.read(message, new Hl7Time(null, Feed.NOW), content);
    } catch (Hl7Format.NotHl7Exception e) {
      throw new AssertionError(e);
    }
    return content;
  }
}
