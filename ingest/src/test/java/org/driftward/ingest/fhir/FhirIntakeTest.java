package org.driftward.ingest.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.fhir.FhirIntake.Result;
import org.driftward.ingest.fuzz.MemoryHouse;
import org.driftward.ingest.mapping.ShippedCodes;
import org.hl7.fhir.r4.model.Observation;
import org.junit.jupiter.api.Test;

/**
 * What becomes of Bundles and Observations. Batch, transaction and conditional create as HL7 FHIR
 * R4 "RESTful API" describes them, panels, members and reasons for absence as its "Observation".
 */
class FhirIntakeTest {

  private static final String WARM = temperature("38.2");
  private static final String TOO_WARM = temperature("139.2");

  private final MemoryHouse house = new MemoryHouse();
  private final FhirIntake intake =
      new FhirIntake(
          house,
          house,
          Catalogue.shipped(),
          ShippedCodes.MAP,
          MemoryHouse.RULES,
          MemoryHouse.LIMITS,
          MemoryHouse.CLOCK);

  @Test
  void shouldAnswerABatchEntryByEntryAndKeepWhatItCan() {
    var result =
        (Result.Each) bundle(FhirSamples.bundle("batch", List.of(WARM, TOO_WARM, panelOf("4"))));

    assertThat(result.each())
        .extracting(EntryAnswer::status)
        .containsExactly(200, 200, 200, 200, 201, 400, 200);
    assertThat(result.each().get(5).faults())
        .extracting(Fault::pointer, Fault::rule)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("/entry/5/resource", "out-of-range"));
    assertThat(house.kept).hasSize(1);
    assertThat(house.find("V-2")).map(Encounter::bed).hasValue("B4");
    assertThat(house.rejections)
        .singleElement()
        .satisfies(it -> assertThat(it.faults()).hasSize(1));
  }

  @Test
  void shouldKeepNothingOfATransactionWithOneFault() {
    var result = bundle(FhirSamples.bundle("transaction", List.of(WARM, TOO_WARM)));

    assertThat(result).isInstanceOf(Result.NotKept.class);
    assertThat(house.kept).isEmpty();
    assertThat(house.find("V-2")).as("not even the bed move").isEmpty();
    assertThat(house.rejections).hasSize(1);
  }

  @Test
  void shouldKeepEveryTypeOfBundleWholeThatIsNoBatch() {
    for (var type : List.of("transaction", "message", "collection", "document", "searchset")) {
      house.forget();
      var kept = (Result.Kept) bundle(FhirSamples.bundle(type, List.of(WARM)));
      assertThat(kept.assessments()).as(type).isEqualTo(1);
      assertThat(kept.changes()).as(type).isEqualTo(1);
    }
  }

  @Test
  void shouldTakeAnObservationOfAStayThatBeginsInTheSameBundle() {
    var own = WARM.replace("Patient/P-1", "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0");
    bundle(FhirSamples.bundle("transaction", List.of(own.replace("/V-1", "/V-2"))));

    assertThat(house.kept).extracting(Assessment::encounter).containsExactly("V-2");
  }

  @Test
  void shouldRefuseToDelete() {
    var deleting =
        FhirSamples.bundle("transaction", List.of(WARM))
            .replace(
                "\"POST\", \"url\": \"Observation\"", "\"DELETE\", \"url\": \"Observation/1\"");
    var result = (Result.NotKept) bundle(deleting);

    assertThat(result.faults()).extracting(Fault::rule).contains("unsupported-request");
  }

  @Test
  void shouldChangeNothingByAConditionalCreateOfWhatExists() {
    observation(WARM, null);
    observation(temperature("36.6"), "identifier=urn:example:charts|O-8310-5");

    var first = house.kept.get(0);
    var conditional = house.kept.get(1);
    assertThat(conditional.id()).isEqualTo(first.id());
    assertThat(conditional.revision()).as("of two the higher wins").isLessThan(first.revision());
  }

  @Test
  void shouldBeTheLowestRevisionWhenCreatedOnCondition() {
    var corrected = WARM.replace("\"final\"", "\"corrected\"");
    observation(corrected, "identifier=urn%3Aexample%3Acharts%7CO-8310-5");

    assertThat(house.kept)
        .singleElement()
        .satisfies(
            it -> {
              assertThat(it.revision()).isEqualTo(1);
              assertThat(it.status()).isEqualTo(Status.FINAL);
            });
  }

  @Test
  void shouldRefuseAConditionThatNamesAnotherResource() {
    var result = (Result.NotKept) observation(WARM, "identifier=urn:example:charts|O-2");

    assertThat(result.faults()).extracting(Fault::rule).containsExactly("unusable-condition");
  }

  @Test
  void shouldReadTheMembersThatAPanelContains() {
    observation(FhirSamples.panel(), null);

    assertThat(house.kept)
        .flatExtracting(Assessment::findings)
        .containsExactly(
            Finding.quantity("respiratory-rate", "22", "/min"),
            Finding.quantity("heart-rate", "88", "/min"));
    assertThat(house.kept).extracting(Assessment::id).doesNotHaveDuplicates();
    assertThat(house.kept)
        .extracting(Assessment::takenAt)
        .containsOnly(Instant.parse("2031-03-02T05:00:00Z"));
    assertThat(house.rejections).isEmpty();
  }

  @Test
  void shouldReadTheMembersBesideAPanelOnceEach() {
    var result =
        (Result.Kept) bundle(FhirSamples.bundle("collection", List.of(panelOf("4"), WARM)));

    assertThat(result.assessments()).isEqualTo(1);
    assertThat(result.unmapped()).isEmpty();
  }

  @Test
  void shouldKeepNothingOfWhatWasNotMeasured() {
    var absent =
        FhirSamples.observation(
            "http://loinc.org",
            "8310-5",
            "\"dataAbsentReason\": {\"coding\": [{\"code\": \"not-performed\"}]}");
    var result = (Result.Kept) observation(absent, null);

    assertThat(result.assessments()).isZero();
    assertThat(result.unmapped()).isEmpty();
  }

  @Test
  void shouldRefuseNeitherAValueNorAReason() {
    var bare = FhirSamples.observation("http://loinc.org", "8310-5", "\"interpretation\": []");
    assertThat(observation(bare, null)).isInstanceOf(Result.NotKept.class);
  }

  @Test
  void shouldReviseByCorrectionAndTakeBackWhatWasAnError() {
    observation(WARM, null);
    observation(at("05:20", temperature("36.6").replace("\"final\"", "\"corrected\"")), null);
    observation(
        at("05:30", TOO_WARM.replace("\"final\"", "\"entered-in-error\"").replace("Cel", "warm")),
        null);

    assertThat(house.kept).extracting(Assessment::id).containsOnly(house.kept.get(0).id());
    assertThat(house.kept).extracting(Assessment::revision).isSorted().doesNotHaveDuplicates();
    assertThat(house.kept)
        .extracting(Assessment::status)
        .containsExactly(Status.FINAL, Status.AMENDED, Status.RETRACTED);
  }

  @Test
  void shouldTakeAValueBackThatACorrectionLeavesOut() {
    observation(WARM, null);
    var withdrawn =
        FhirSamples.observation(
                "http://loinc.org",
                "8310-5",
                "\"dataAbsentReason\": {\"coding\": [{\"code\": \"error\"}]}")
            .replace("\"final\"", "\"amended\"");
    observation(withdrawn, null);

    assertThat(house.kept.get(1).status()).isEqualTo(Status.RETRACTED);
    assertThat(house.kept.get(1).revision()).isGreaterThan(house.kept.get(0).revision());
  }

  @Test
  void shouldReportAComponentThatNobodyHasMapped() {
    var mixed =
        FhirSamples.observation(
            "http://loinc.org",
            "85354-9",
            """
            "component": [
              {"code": {"coding": [{"system": "http://loinc.org", "code": "8480-6"}]}, %s},
              {"code": {"coding": [{"system": "http://loinc.org", "code": "8357-6"}]},
               "valueString": "cuff"}]
            """
                .formatted(FhirSamples.quantity("107", "mm[Hg]")));
    var result = (Result.Kept) observation(mixed, null);

    assertThat(result.assessments()).isEqualTo(1);
    assertThat(result.unmapped()).extracting(Fault::pointer).containsExactly("/component/1/code");
    assertThat(house.rejections).hasSize(1);
    assertThat(house.rejections.get(0).unmapped())
        .extracting(seen -> seen.code().code())
        .containsExactly("8357-6");
  }

  @Test
  void shouldMoveThePatientToTheBedOfTheActiveLocationSinceItsPeriod() {
    var moved =
        FhirSamples.bundle("transaction", List.of())
            .replace("\"P-2\"", "\"P-1\"")
            .replace("\"V-2\"", "\"V-1\"")
            .replace(
                "\"location\": [{",
                """
                "location": [
                  {"status": "completed", "location": {"display": "heron"}},
                  {"status": "planned", "location": {"display": "sorrel"}}, {""");
    bundle(moved);

    assertThat(house.find("V-1").orElseThrow().stays())
        .containsExactly(
            new Stay("heron", "A1", MemoryHouse.ADMITTED),
            new Stay("linden", "B4", Instant.parse("2031-03-01T22:00:00Z")));
  }

  @Test
  void shouldEndTheStayThatIsFinishedOrCancelled() {
    for (var status : List.of("finished", "cancelled", "entered-in-error")) {
      house.forget();
      bundle(FhirSamples.bundle("collection", List.of()));
      bundle(
          FhirSamples.bundle("collection", List.of())
              .replace("\"in-progress\"", "\"" + status + "\""));
      assertThat(house.find("V-2")).map(Encounter::present).as(status).hasValue(false);
    }
  }

  @Test
  void shouldNotAdmitWhoIsOnlyExpected() {
    bundle(FhirSamples.bundle("collection", List.of()).replace("\"in-progress\"", "\"planned\""));

    assertThat(house.find("V-2")).isEmpty();
  }

  @Test
  void shouldRefuseAPeriodThatEndsBeforeItStarts() {
    var backwards =
        FhirSamples.bundle("collection", List.of())
            .replace("\"in-progress\"", "\"finished\"")
            .replace("10:00:00Z\"}", "10:00:00Z\", \"end\": \"2031-03-01T09:00:00Z\"}");
    var result = (Result.NotKept) bundle(backwards);

    assertThat(result.faults())
        .extracting(Fault::rule)
        .containsExactly("discharged-before-admitted");
  }

  private Result bundle(String json) {
    return intake.take(FhirSamples.bundle(json), received(json), "feed", ward -> true);
  }

  private Result observation(String json, String ifNoneExist) {
    Observation observation = FhirSamples.observation(json);
    return intake.take(observation, ifNoneExist, received(json), "feed", ward -> true);
  }

  private static Received received(String json) {
    return new Received(
        "http/feed",
        Assessment.Source.FHIR,
        "POST /fhir",
        FhirFormat.JSON,
        json.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  private static String temperature(String value) {
    return FhirSamples.observation(
        "http://loinc.org", "8310-5", FhirSamples.quantity(value, "Cel"));
  }

  private static String at(String issued, String observation) {
    return observation.replace(
        "\"issued\": \"2031-03-02T05:01", "\"issued\": \"2031-03-02T" + issued);
  }

  private static String panelOf(String member) {
    return FhirSamples.observation(
        "http://loinc.org",
        "85353-1",
        "\"hasMember\": [{\"reference\": \"Observation/" + member + "\"}]");
  }
}
