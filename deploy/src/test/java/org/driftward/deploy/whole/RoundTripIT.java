package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Side;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What comes in by any way and is read over FHIR has the same value, unit, time and site: random
 * values, from a fixed seed, for every finding of the catalogue at every site and side.
 */
@WithRunningApp
class RoundTripIT {

  /** A finding of one time. */
  record Taken(Instant at, Finding finding) {
    Fact fact() {
      return Fact.of(finding, at.toString());
    }
  }

  /** A way in. Another one is another constant. */
  enum Way {
    ASSESSMENTS {
      @Override
      void send(FhirFeed feed, String encounter, List<Taken> all) {
        var assessments =
            all.stream().map(each -> assessment(encounter, each)).toArray(Assessment[]::new);
        var body = JsonFormat.of(Assessment[].class).write(assessments);
        var answer = feed.post("/api/assessments", "application/json", body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(202);
      }
    },
    FHIR_JSON {
      @Override
      void send(FhirFeed feed, String encounter, List<Taken> all) {
        var body = FhirFeed.R4.newJsonParser().encodeResourceToString(bundle(encounter, all));
        var answer = feed.post("/fhir", FhirFeed.JSON, body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
      }
    },
    FHIR_XML {
      @Override
      void send(FhirFeed feed, String encounter, List<Taken> all) {
        var body = FhirFeed.R4.newXmlParser().encodeResourceToString(bundle(encounter, all));
        var answer = feed.post("/fhir", FhirFeed.XML, body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
      }
    };

    abstract void send(FhirFeed feed, String encounter, List<Taken> all);
  }

  private final FhirFeed feed;
  private final Ward ward;

  RoundTripIT(RunningApp app) {
    this.feed = new FhirFeed(app);
    this.ward = Ward.open(app, "sorrel");
  }

  @ParameterizedTest
  @EnumSource(Way.class)
  void shouldPublishWhatCameIn(Way way) {
    var encounter = "V-51-" + way.name();
    ward.admit(encounter, "1", "Harrowgate, Sunniva");
    var all = specimens(new Random(20310302), Instant.now().minusSeconds(3600));
    way.send(feed, encounter, all);

    var expected = all.stream().map(Taken::fact).collect(Collectors.toSet());
    assertThat(expected).hasSizeGreaterThan(240);
    await()
        .atMost(Duration.ofMinutes(2))
        .pollInterval(Duration.ofSeconds(2))
        .untilAsserted(
            () ->
                assertThat(feed.observations(encounter))
                    .flatExtracting(Fact::of)
                    .containsExactlyInAnyOrderElementsOf(expected));
  }

  /** Each at a time of its own, to the microsecond, which is what the database keeps. */
  private static List<Taken> specimens(Random random, Instant from) {
    var all = new ArrayList<Taken>();
    for (var entry : Catalogue.shipped().entries()) {
      for (var key : keys(entry)) {
        var at =
            from.plus(all.size() * 1_000_003L, ChronoUnit.MICROS).truncatedTo(ChronoUnit.MICROS);
        all.add(new Taken(at, new Finding(key, value(entry, random))));
      }
    }
    return all;
  }

  private static List<FindingKey> keys(CatalogueEntry entry) {
    var sites =
        entry.sites().isEmpty() ? new String[] {null} : entry.sites().toArray(String[]::new);
    var sides = entry.sided() ? Side.values() : new Side[] {null};
    var keys = new ArrayList<FindingKey>();
    for (var site : sites) {
      for (var side : sides) {
        keys.add(new FindingKey(entry.code(), site, side));
      }
    }
    return keys;
  }

  private static FindingValue value(CatalogueEntry entry, Random random) {
    return switch (entry.kind()) {
      case QUANTITY -> new FindingValue.Quantity(number(entry.accepted(), random, 1), entry.unit());
      case GRADE -> new FindingValue.Grade(number(entry.accepted(), random, 0).intValueExact());
      case CODED ->
          new FindingValue.Coded(entry.options().get(random.nextInt(entry.options().size())));
      case TEXT -> new FindingValue.Text("slept well, " + random.nextInt(9) + " h \u2192 \u00e9");
    };
  }

  private static BigDecimal number(Range range, Random random, int decimals) {
    var width = range.high().subtract(range.low());
    return range
        .low()
        .add(width.multiply(BigDecimal.valueOf(random.nextDouble())))
        .setScale(decimals, RoundingMode.DOWN);
  }

  private static Assessment assessment(String encounter, Taken taken) {
    return new Assessment(
        "RT-" + taken.hashCode(),
        1,
        Assessment.Status.FINAL,
        encounter,
        "P-" + encounter,
        taken.at(),
        taken.at(),
        Assessment.Source.BEDSIDE,
        "n.fairweather",
        null,
        List.of(taken.finding()));
  }

  private static Bundle bundle(String encounter, List<Taken> all) {
    var bundle = new Bundle().setType(Bundle.BundleType.COLLECTION);
    all.forEach(taken -> bundle.addEntry().setResource(observation(encounter, taken)));
    return bundle;
  }

  private static Observation observation(String encounter, Taken taken) {
    var key = taken.finding().key();
    var loinc = Catalogue.shipped().find(key.code()).orElseThrow().loinc();
    var observation = new Observation().setStatus(Observation.ObservationStatus.FINAL);
    observation
        .getCode()
        .addCoding()
        .setSystem(loinc == null ? CodeSystem.FINDING : CodeSystem.LOINC)
        .setCode(loinc == null ? key.code() : loinc);
    observation.setSubject(new Reference("Patient/P-" + encounter));
    observation.setEncounter(new Reference("Encounter/" + encounter));
    observation.setEffective(new DateTimeType(taken.at().toString()));
    if (key.site() != null) {
      observation.getBodySite().addCoding().setSystem(CodeSystem.SITE).setCode(key.site());
    }
    if (key.side() != null) {
      observation.getBodySite().addCoding().setSystem(CodeSystem.SIDE).setCode(key.side().word());
    }
    var value = taken.finding().value();
    if (value instanceof FindingValue.Quantity quantity) {
      observation.setValue(
          new Quantity()
              .setValue(quantity.value())
              .setSystem(CodeSystem.UCUM)
              .setCode(quantity.unit()));
    } else if (value instanceof FindingValue.Grade grade) {
      observation.setValue(new IntegerType(grade.grade()));
    } else if (value instanceof FindingValue.Coded coded) {
      var answer = new CodeableConcept();
      answer.addCoding().setSystem(CodeSystem.FINDING).setCode(coded.code());
      observation.setValue(answer);
    } else {
      observation.setValue(new StringType(value.plain()));
    }
    return observation;
  }
}
