package org.driftward.dashboard.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.dashboard.Samples;
import org.driftward.dashboard.core.Moment;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoreGuide;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Everything that is published, checked by HL7's validator against the definitions of FHIR R4 and
 * its vital-signs profiles.
 */
class PublicationTest {

  private final Publication publication = new Publication(Catalogue.shipped());

  static Stream<CatalogueEntry> entries() {
    return Specimens.entries();
  }

  static Stream<ScoreGuide> scores() {
    return ScoreGuide.inForce(List.<Path>of(), Catalogue.shipped()).stream();
  }

  @ParameterizedTest
  @MethodSource("entries")
  void shouldPublishEveryFindingOfTheCatalogueAsR4HasIt(CatalogueEntry entry) {
    var findings = Specimens.findings(entry);
    var observations = publish(Specimens.assessment(Status.FINAL, findings));

    assertThat(observations).hasSameSizeAs(findings);
    assertThat(observations)
        .extracting(it -> it.getIdElement().getIdPart())
        .doesNotHaveDuplicates();
    assertThat(observations).allSatisfy(it -> assertThat(R4.errors(it)).isEmpty());
  }

  @ParameterizedTest
  @EnumSource(Status.class)
  void shouldPublishEveryStatusAsR4HasIt(Status status) {
    var observations =
        publish(
            Specimens.assessment(status, List.of(Finding.quantity("heart-rate", "88", "/min"))));

    assertThat(observations).allSatisfy(it -> assertThat(R4.errors(it)).isEmpty());
    assertThat(observations.get(0).getStatus().toCode())
        .isEqualTo(
            switch (status) {
              case FINAL -> "final";
              case AMENDED -> "amended";
              case RETRACTED -> "entered-in-error";
            });
  }

  @Test
  void shouldPublishBothPressuresAsOnePanel() {
    var observations =
        publish(
            Specimens.assessment(
                Status.FINAL,
                List.of(
                    Finding.quantity("systolic-pressure", "107", "mm[Hg]"),
                    Finding.quantity("diastolic-pressure", "60", "mm[Hg]"))));

    assertThat(observations)
        .singleElement()
        .satisfies(
            it -> {
              assertThat(R4.errors(it)).isEmpty();
              assertThat(it.getMeta().hasProfile("http://hl7.org/fhir/StructureDefinition/bp"))
                  .isTrue();
              assertThat(it.getComponent())
                  .extracting(component -> component.getValueQuantity().getValue().intValue())
                  .containsExactly(107, 60);
            });
  }

  /** Profiles and codes as the table of R4 "Vital Signs" lists them. */
  @Test
  void shouldFollowTheVitalSignsProfiles() {
    var profiled =
        Specimens.entries()
            .filter(entry -> entry.loinc() != null)
            .flatMap(
                entry ->
                    publish(Specimens.assessment(Status.FINAL, Specimens.findings(entry))).stream())
            .filter(it -> it.getMeta().hasProfile())
            .flatMap(it -> it.getCode().getCoding().stream())
            .filter(coding -> "http://loinc.org".equals(coding.getSystem()))
            .map(coding -> coding.getCode())
            .distinct();

    assertThat(profiled)
        .containsExactlyInAnyOrder(
            "9279-1", "8867-4", "2708-6", "8310-5", "8302-2", "29463-7", "85354-9");
  }

  @Test
  void shouldHaveTheValidatorNoticeWhatAProfileForbids() {
    var heartRate =
        publish(
                Specimens.assessment(
                    Status.FINAL, List.of(Finding.quantity("heart-rate", "88", "/min"))))
            .get(0);
    heartRate.getValueQuantity().setCode("/h");

    assertThat(R4.errors(heartRate)).isNotEmpty();
  }

  @ParameterizedTest
  @MethodSource("scores")
  void shouldPublishEveryScoreAsR4HasIt(ScoreGuide guide) {
    var complete = publish(score(guide, "7", "7"));
    var partial = publish(score(guide, "2.5", "7"));

    assertThat(R4.errors(complete)).isEmpty();
    assertThat(complete.getValue()).isInstanceOf(Quantity.class);
    assertThat(R4.errors(partial)).isEmpty();
    assertThat(((Range) partial.getValue()).getLow().getValue()).isEqualByComparingTo("2.5");
    assertThat(((Range) partial.getValue()).getHigh().getValue()).isEqualByComparingTo("7");
    assertThat(partial.getComponent().get(1).hasDataAbsentReason()).isTrue();
    assertThat(partial.getNoteFirstRep().getText()).contains("Clinical judgement");
  }

  @Test
  void shouldStateWhatItCanDoAsR4HasIt() {
    assertThat(R4.errors(Capability.statement())).isEmpty();
  }

  @Test
  void shouldAnswerASearchAsR4HasIt() {
    var observations =
        publish(
            Specimens.assessment(
                Status.FINAL, List.of(Finding.quantity("heart-rate", "88", "/min"))));
    var search = Search.of("V-1", List.of("8867-4"), List.of("ge2026-01-05"), "1", null);
    var next = new Search.Start(mark(), 0);
    var set =
        SearchSet.of(
            search,
            new Searcher.Page(observations, next),
            URI.create("http://127.0.0.1:8080/fhir/Observation"));

    assertThat(R4.errors(set)).isEmpty();
    assertThat(set.getLink("next").getUrl()).contains("page=" + next.token());
  }

  private static org.driftward.dashboard.core.MomentReader.Mark mark() {
    return new org.driftward.dashboard.core.MomentReader.Mark(Specimens.TAKEN, "A-1");
  }

  private List<Observation> publish(Assessment assessment) {
    return publication.of(new Moment(assessment.encounter(), assessment, null));
  }

  private Observation publish(Score score) {
    var assessment = Samples.assessment("V-1", "A-1", 1, 0);
    var plain = Samples.snapshot("V-1", "A-1", 1, 0, 7, 7);
    var snapshot =
        new Snapshot(
            plain.encounter(),
            plain.asOf(),
            plain.assessment(),
            1,
            true,
            false,
            plain.policy(),
            0,
            List.of(score),
            List.of(),
            List.of(),
            List.of(),
            plain.lastSet(),
            List.of(),
            plain.nextDue(),
            plain.interval(),
            plain.intervalReason(),
            plain.acceptedAt());
    var observations = publication.of(new Moment(assessment.encounter(), assessment, snapshot));
    return observations.get(observations.size() - 1);
  }

  private static Score score(ScoreGuide guide, String low, String high) {
    boolean complete = low.equals(high);
    return new Score(
        guide.id(),
        guide.title(),
        guide.version(),
        new BigDecimal(low),
        new BigDecimal(high),
        complete,
        guide.risks().get(0).id(),
        guide.risks().get(guide.risks().size() - 1).id(),
        3,
        null,
        complete ? List.of() : List.of("temperature"),
        List.of(
            new ScoredInput(
                "heart-rate",
                Scalar.of(new BigDecimal("88")),
                "/min",
                Samples.START,
                0,
                "51 to 90",
                "Pulse",
                guide.source(),
                null)));
  }
}
