package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.deploy.whole.Specimens.Taken;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.JsonFormat;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;

/** A way in. Another one is another constant. */
enum Way {
  ASSESSMENTS {
    @Override
    void send(RunningApp app, String encounter, List<Taken> all) {
      var assessments =
          all.stream().map(each -> assessment(encounter, each)).toArray(Assessment[]::new);
      var body = JsonFormat.of(Assessment[].class).write(assessments);
      var answer = new FhirFeed(app).post("/api/assessments", "application/json", body);
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(202);
    }
  },
  FHIR_JSON {
    @Override
    void send(RunningApp app, String encounter, List<Taken> all) {
      var body = FhirFeed.R4.newJsonParser().encodeResourceToString(bundle(encounter, all));
      var answer = new FhirFeed(app).post("/fhir", FhirFeed.JSON, body);
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }
  },
  FHIR_XML {
    @Override
    void send(RunningApp app, String encounter, List<Taken> all) {
      var body = FhirFeed.R4.newXmlParser().encodeResourceToString(bundle(encounter, all));
      var answer = new FhirFeed(app).post("/fhir", FhirFeed.XML, body);
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }
  },
  /** One message of ORU^R01, one OBX for each finding: HL7 v2.5.1 chapter 7.4.2. */
  HL7 {
    /** DTM has four digits after the second: chapter 2A. */
    @Override
    Duration finest() {
      return Duration.ofNanos(100_000);
    }

    @Override
    void send(RunningApp app, String encounter, List<Taken> all) {
      var segments = new ArrayList<String>();
      segments.add(
          "MSH|^~\\&|GATEWAY|WEST|DRIFTWARD|HOUSE|%s||ORU^R01|M-1|P|2.5.1||||||UNICODE UTF-8"
              .formatted(DTM.format(all.get(all.size() - 1).at())));
      segments.add("PID|1||P-" + encounter);
      segments.add("PV1|1|I|" + "|".repeat(16) + encounter);
      segments.add("OBR|1||F-1^GATEWAY|SET^Examination^L");
      all.forEach(taken -> segments.add(obx(segments.size() - 3, taken)));
      try (var sender = new MllpSender(app.mllpPort())) {
        assertThat(sender.exchange(String.join("\r", segments)))
            .contains("MSA|AA|")
            .doesNotContain("ERR|");
      }
    }
  },
  /** A row for each finding, a column for each finding, site and side; RFC 4180. */
  CSV {
    @Override
    void send(RunningApp app, String encounter, List<Taken> all) {
      var columns =
          all.stream().map(Way::column).collect(Collectors.toCollection(LinkedHashSet::new));
      var file = new StringBuilder("encounter,patient,takenAt,");
      file.append(String.join(",", columns)).append("\r\n");
      for (var taken : all) {
        var cells =
            columns.stream()
                .map(column -> column.equals(column(taken)) ? quoted(taken) : "")
                .collect(Collectors.joining(","));
        file.append("%s,P-%s,%s,%s\r\n".formatted(encounter, encounter, taken.at(), cells));
      }
      var admin = app.asAdmin();
      var begun = new FhirFeed(app).post("/api/imports", "text/csv", file.toString());
      assertThat(begun.statusCode()).as(begun.body()).isEqualTo(202);
      var progress = begun.headers().firstValue("Location").orElseThrow();
      await()
          .atMost(Duration.ofMinutes(2))
          .untilAsserted(
              () -> {
                var now = admin.get(progress).json();
                assertThat(now.get("state").asText()).isEqualTo("finished");
                assertThat(now.get("rejected").asInt()).isZero();
                assertThat(now.get("accepted").asInt()).isEqualTo(all.size());
              });
    }
  };

  private static final DateTimeFormatter DTM =
      DateTimeFormatter.ofPattern("yyyyMMddHHmmss.SSSSZ").withZone(ZoneOffset.UTC);

  abstract void send(RunningApp app, String encounter, List<Taken> all);

  /** How finely this way tells time. */
  Duration finest() {
    return Duration.ofNanos(1000);
  }

  /** OBX-20 has the site and the side, in our own words. */
  private static String obx(int number, Taken taken) {
    var key = taken.finding().key();
    var value = taken.finding().value();
    var places = new ArrayList<String>();
    if (key.site() != null) {
      places.add(key.site() + "^^99DRIFTWARD");
    }
    if (key.side() != null) {
      places.add(key.side().word() + "^^99DRIFTWARD");
    }
    var type =
        value instanceof FindingValue.Coded
            ? "CWE"
            : value instanceof FindingValue.Text ? "TX" : "NM";
    var unit = value instanceof FindingValue.Quantity quantity ? quantity.unit() + "^^UCUM" : "";
    return "OBX|%d|%s|%s^^99DRIFTWARD||%s|%s|||||F|||%s||||||%s"
        .formatted(
            number,
            type,
            key.code(),
            value.plain() + (type.equals("CWE") ? "^^99DRIFTWARD" : ""),
            unit,
            DTM.format(taken.at()),
            String.join("~", places));
  }

  private static String column(Taken taken) {
    FindingKey key = taken.finding().key();
    return key.code()
        + (key.site() == null ? "" : "@" + key.site())
        + (key.side() == null ? "" : "/" + key.side().word())
        + (taken.finding().value() instanceof FindingValue.Quantity quantity
            ? " [" + quantity.unit() + "]"
            : "");
  }

  private static String quoted(Taken taken) {
    return '"' + taken.finding().value().plain().replace("\"", "\"\"") + '"';
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
