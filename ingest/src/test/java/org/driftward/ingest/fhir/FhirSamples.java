package org.driftward.ingest.fhir;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Resource;

/** Invented resources in the shapes of HL7 FHIR R4, about patient P-1 of stay V-1. */
final class FhirSamples {

  /** Each kind of value that the catalogue has, with components, members and a body site. */
  static final List<String> OBSERVATIONS =
      List.of(
          observation("http://loinc.org", "8310-5", quantity("38.2", "Cel")),
          observation("http://loinc.org", "72514-3", "\"valueInteger\": 4"),
          observation(
              "http://loinc.org",
              "85354-9",
              """
              "component": [
                {"code": {"coding": [{"system": "http://loinc.org", "code": "8480-6"}]}, %s},
                {"code": {"coding": [{"system": "http://loinc.org", "code": "8462-4"}]},
                 "dataAbsentReason": {"coding": [{"code": "not-performed"}]}}]
              """
                  .formatted(quantity("107", "mm[Hg]"))),
          observation(
              "urn:driftward:finding",
              "pulse-amplitude",
              """
              "valueInteger": 1, "bodySite": {"coding": [
                {"system": "urn:driftward:site", "code": "dorsalis-pedis"},
                {"system": "urn:driftward:side", "code": "left"}]}
              """),
          observation(
              "urn:driftward:finding",
              "consciousness",
              """
              "valueCodeableConcept": {"coding": [
                {"system": "urn:driftward:finding", "code": "alert"}]}
              """),
          observation("urn:driftward:finding", "note", "\"valueString\": \"slept well\""),
          panel());

  private FhirSamples() {}

  static String quantity(String value, String unit) {
    return """
        "valueQuantity": {"value": %s, "system": "http://unitsofmeasure.org", "code": "%s"}
        """
        .formatted(value, unit);
  }

  static String observation(String system, String code, String rest) {
    return """
        {"resourceType": "Observation", "status": "final",
         "identifier": [{"system": "urn:example:charts", "value": "O-%s"}],
         "code": {"coding": [{"system": "%s", "code": "%s"}]},
         "subject": {"reference": "Patient/P-1"}, "encounter": {"reference": "Encounter/V-1"},
         "performer": [{"identifier": {"value": "n.fairweather"}}],
         "effectiveDateTime": "2031-03-02T05:00:00Z", "issued": "2031-03-02T05:01:00Z", %s}
        """
        .formatted(code, system, code, rest);
  }

  /** A vital-signs panel that contains its members. */
  static String panel() {
    return observation(
        "http://loinc.org",
        "85353-1",
        """
        "hasMember": [{"reference": "#m1"}, {"reference": "#m2"}, {"reference": "Observation/9"}],
        "contained": [
          {"resourceType": "Observation", "id": "m1", "status": "final",
           "code": {"coding": [{"system": "http://loinc.org", "code": "9279-1"}]}, %s},
          {"resourceType": "Observation", "id": "m2", "status": "final",
           "code": {"coding": [{"system": "http://loinc.org", "code": "8867-4"}]}, %s}]
        """
            .formatted(quantity("22", "/min"), quantity("88", "/min")));
  }

  /** Patient P-2 comes to bed B4, which is part of ward linden; then the observations of P-1. */
  static String bundle(String type, List<String> observations) {
    var entries = new StringBuilder();
    for (var observation : observations) {
      entries.append(", {\"resource\": ").append(observation).append(request("Observation"));
    }
    return """
        {"resourceType": "Bundle", "type": "%s", "entry": [
          {"fullUrl": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0",
           "resource": {"resourceType": "Patient", "identifier": [{"value": "P-2"}],
             "name": [{"family": "Quillwater", "given": ["Maren"]}], "gender": "female",
             "birthDate": "1950-04-03"} %s,
          {"resource": {"resourceType": "Location", "id": "ward", "name": "linden",
             "physicalType": {"coding": [{"code": "wa"}]}} %s,
          {"resource": {"resourceType": "Location", "id": "bed", "name": "B4",
             "physicalType": {"coding": [{"code": "bd"}]},
             "partOf": {"reference": "Location/ward"}} %s,
          {"resource": {"resourceType": "Encounter", "status": "in-progress",
             "class": {"code": "IMP"}, "identifier": [{"value": "V-2"}],
             "subject": {"reference": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0"},
             "period": {"start": "2031-03-01T10:00:00Z"},
             "location": [{"status": "active", "location": {"reference": "Location/bed"},
               "period": {"start": "2031-03-01T22:00:00Z"}}]} %s %s]}
        """
        .formatted(
            type,
            request("Patient"),
            request("Location"),
            request("Location"),
            request("Encounter"),
            entries);
  }

  private static String request(String type) {
    return ", \"request\": {\"method\": \"POST\", \"url\": \"" + type + "\"}}";
  }

  static Observation observation(String json) {
    return read(Observation.class, json);
  }

  static Bundle bundle(String json) {
    return read(Bundle.class, json);
  }

  static <T extends Resource> T read(Class<T> type, String json) {
    return new FhirFormat().read(type, FhirFormat.JSON, json.getBytes(StandardCharsets.UTF_8));
  }

  static String xml(Class<? extends Resource> type, String json) {
    return new FhirFormat().write(read(type, json), FhirFormat.XML);
  }
}
