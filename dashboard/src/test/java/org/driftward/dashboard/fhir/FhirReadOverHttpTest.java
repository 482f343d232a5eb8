package org.driftward.dashboard.fhir;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.retracted;
import static org.driftward.dashboard.Samples.snapshot;

import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.web.api.DatabaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Reading over FHIR R4, over real HTTP and on a real PostgreSQL. */
@QuarkusTest
@WithTestResource(DatabaseResource.class)
@Timeout(120)
class FhirReadOverHttpTest {

  private static final String PASSWORD = "a password of the tests";
  private static final int SETS = 450;

  @Inject ReadModel model;
  @Inject StoredAccounts accounts;
  @Inject DataSource database;

  /** Ward W1: 450 pulses a minute apart, one score, one retraction. Ward W2: nothing yet. */
  @BeforeEach
  void fill() throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(
          "DELETE FROM dashboard.account; DELETE FROM dashboard.encounter;"
              + " DELETE FROM dashboard.snapshot; DELETE FROM dashboard.assessment");
    }
    accounts.put(new Account("nurse", "A nurse", Set.of("charge"), Set.of("W1")), PASSWORD);
    var assessments =
        new ArrayList<>(
            IntStream.range(0, SETS).mapToObj(i -> assessment("V", "A" + i, 1, i)).toList());
    assessments.add(retracted("V", "R", 2, 3));
    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "3", 1), encounter("U", "W2", "1", 1)),
            List.of(),
            assessments,
            List.of(snapshot("V", "A449", 1, 449, 6, 8)),
            List.of()));
  }

  @Test
  void shouldTellEverybodyWhatItCanDo() {
    var answer = given().get("/fhir/metadata");

    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.contentType()).startsWith("application/fhir+json");
    var statement =
        R4.CONTEXT.newJsonParser().parseResource(CapabilityStatement.class, answer.asString());
    assertThat(statement.getFhirVersion().toCode()).isEqualTo("4.0.1");
    assertThat(R4.errors(answer.asString())).isEmpty();
  }

  @Test
  void shouldPageThroughAStayNewestFirstWithoutLossOrRepetition() {
    var ids = new ArrayList<String>();
    var times = new ArrayList<String>();
    var next = "/fhir/Observation?encounter=V&_count=130";
    int pages = 0;
    while (next != null) {
      var page = bundle(nurse().urlEncodingEnabled(false).get(next));
      page.getEntry().stream()
          .map(entry -> (Observation) entry.getResource())
          .forEach(
              it -> {
                ids.add(it.getIdElement().getIdPart());
                times.add(it.getEffectiveDateTimeType().getValueAsString());
              });
      next = page.getLink("next") == null ? null : page.getLink("next").getUrl();
      pages++;
    }

    assertThat(pages).isEqualTo(4);
    assertThat(ids).hasSize(SETS + 1).doesNotHaveDuplicates();
    assertThat(times).isSortedAccordingTo(java.util.Comparator.reverseOrder());
  }

  @Test
  void shouldFindByCodeAndDate() {
    assertThat(
            size(
                "code=http://loinc.org%7C8867-4&date=ge2026-01-05T03:10:00Z&date=lt2026-01-05T03:20:00Z"))
        .isEqualTo(10);
    assertThat(size("code=urn:driftward:score%7Cnews2")).isEqualTo(1);
    assertThat(size("code=8310-5,8867-4&date=2026-01-05T03:00")).isEqualTo(1);
    assertThat(size("code=8310-5")).isZero();
    assertThat(size("date=2026-01-04")).isZero();
    assertThat(size("date=2026&_count=1000")).isEqualTo(SETS + 1);
  }

  @Test
  void shouldReadEachByItsId() {
    var score =
        bundle(
            nurse()
                .urlEncodingEnabled(false)
                .get("/fhir/Observation?encounter=Encounter/V&code=news2"));
    var id = score.getEntryFirstRep().getResource().getIdElement().getIdPart();
    var answer = nurse().header("Accept", "application/fhir+xml").get("/fhir/Observation/" + id);

    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.contentType()).startsWith("application/fhir+xml");
    var read = R4.CONTEXT.newXmlParser().parseResource(Observation.class, answer.asString());
    assertThat(read.getValueRange().getLow().getValue()).isEqualByComparingTo("6");
    assertThat(read.getValueRange().getHigh().getValue()).isEqualByComparingTo("8");
  }

  @Test
  void shouldTellWhatWasTakenBackFromWhatNeverWas() {
    var gone =
        org.driftward.ingest.contract.PublishedId.finding(
            "V", "R", org.driftward.ingest.contract.FindingKey.of("heart-rate"));
    assertProblem(nurse().get("/fhir/Observation/" + gone), 410);
    assertProblem(nurse().get("/fhir/Observation/f-0"), 404);
    assertProblem(
        nurse().get("/fhir/Observation/" + gone.replace("f-", "f-0").substring(0, 47)), 404);
  }

  @Test
  void shouldShowOnesOwnWardOnly() {
    assertThat(given().get("/fhir/Observation?encounter=V").statusCode()).isEqualTo(401);
    assertProblem(nurse().get("/fhir/Observation?encounter=U"), 403);
    assertProblem(nurse().get("/fhir/Observation?encounter=nobody"), 404);
  }

  @Test
  void shouldSayWhatItCannotRead() {
    assertProblem(nurse().get("/fhir/Observation"), 400);
    assertProblem(nurse().get("/fhir/Observation?encounter=V&date=yesterday"), 400);
    assertProblem(nurse().get("/fhir/Observation?encounter=V&_count=0"), 400);
    assertProblem(nurse().get("/fhir/Observation?encounter=V&page=AAAA"), 400);
  }

  private int size(String parameters) {
    return bundle(
            nurse().urlEncodingEnabled(false).get("/fhir/Observation?encounter=V&" + parameters))
        .getEntry()
        .size();
  }

  private static Bundle bundle(Response answer) {
    assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
    assertThat(answer.header("Cache-Control")).contains("no-store");
    return R4.CONTEXT.newJsonParser().parseResource(Bundle.class, answer.asString());
  }

  private static void assertProblem(Response answer, int status) {
    assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
    R4.CONTEXT.newJsonParser().parseResource(OperationOutcome.class, answer.asString());
  }

  private static RequestSpecification nurse() {
    return given().auth().preemptive().basic("nurse", PASSWORD);
  }
}
