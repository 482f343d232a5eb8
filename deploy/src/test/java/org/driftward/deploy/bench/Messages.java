package org.driftward.deploy.bench;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.driftward.deploy.whole.RunningApp;

/**
 * Full sets of vital signs of invented patients, written in every wire format. Each has an id of
 * its own. Safe for many threads.
 */
final class Messages {

  private static final Instant ADMITTED = Instant.parse("2026-01-05T06:00:00Z");

  private final AtomicLong count = new AtomicLong();
  private final int encounters;

  Messages(int encounters) {
    this.encounters = encounters;
  }

  /** The next set, of the next patient in turn. */
  Message next() {
    long number = count.getAndIncrement();
    return new Message(
        "B-" + number,
        "V-" + number % encounters,
        ADMITTED.plusSeconds(60 * (number / encounters)),
        14 + (int) (number % 9));
  }

  String assessment() {
    return next().assessment();
  }

  /** An array of a hundred. */
  String hundred() {
    return IntStream.range(0, 100)
        .mapToObj(i -> assessment())
        .collect(Collectors.joining(",", "[", "]"));
  }

  /** A FHIR batch of five Observations. */
  String bundle() {
    return next().bundle();
  }

  /** A message of HL7 v2 with five OBX. */
  String hl7() {
    return next().hl7();
  }

  /** A file of CSV with a header and so many rows. */
  String csv(int rows) {
    return IntStream.range(0, rows)
        .mapToObj(i -> next().row())
        .collect(Collectors.joining("\r\n", Message.HEADER + "\r\n", "\r\n"));
  }

  /** A file of so many JSON objects, a line for each. */
  String ndjson(int rows) {
    return IntStream.range(0, rows)
        .mapToObj(i -> assessment())
        .collect(Collectors.joining("\n", "", "\n"));
  }

  /** Admits the first so many patients. */
  static void admit(RunningApp app, int patients) {
    for (int i = 0; i < patients; i++) {
      var answer = app.asAdmin().put("/api/encounters/V-" + i, encounter(i));
      if (answer.status() / 100 != 2) {
        throw new IllegalStateException(answer.body());
      }
    }
  }

  /** The body that admits the patient. */
  private static String encounter(int number) {
    return """
        {"patient":{"id":"P-%1$d","name":"Quillfeather, Anders","birthDate":"1951-04-02","sex":"male"},
         "ward":"bench","bed":"%1$d","admitted":"%2$s"}
        """
        .formatted(number, ADMITTED);
  }

  /** One set. */
  record Message(String id, String encounter, Instant takenAt, int respiratoryRate) {

    /** As our own JSON, the bytes that also stand on the topic but for their order. */
    String assessment() {
      return """
          {"id":"%s","revision":1,"status":"final","encounter":"%s","patient":"%s","takenAt":"%s",\
          "recordedAt":"%s","source":"monitor","by":"bench","findings":[\
          {"code":"respiratory-rate","value":%d,"unit":"/min"},\
          {"code":"oxygen-saturation","value":97,"unit":"%%"},{"code":"inspired-oxygen","coded":"air"},\
          {"code":"systolic-pressure","value":121,"unit":"mm[Hg]"},\
          {"code":"heart-rate","value":74,"unit":"/min"},{"code":"consciousness","coded":"alert"},\
          {"code":"temperature","value":36.9,"unit":"Cel"}]}"""
          .formatted(id, encounter, patient(), takenAt, takenAt, respiratoryRate);
    }

    String bundle() {
      return """
          {"resourceType":"Bundle","type":"batch","entry":[%s,%s,%s,%s,%s]}"""
          .formatted(
              observation("9279-1", respiratoryRate, "/min"),
              observation("2708-6", 97, "%"),
              observation("8480-6", 121, "mm[Hg]"),
              observation("8867-4", 74, "/min"),
              observation("8310-5", 36.9, "Cel"));
    }

    private static final DateTimeFormatter DTM =
        DateTimeFormatter.ofPattern("yyyyMMddHHmmssZ").withZone(ZoneOffset.UTC);

    static final String HEADER =
        "id,encounter,patient,takenAt,source,by,respiratory-rate [/min],oxygen-saturation [%],"
            + "inspired-oxygen,systolic-pressure [mm[Hg]],heart-rate [/min],consciousness,"
            + "temperature [Cel]";

    String row() {
      return "%s,%s,%s,%s,monitor,bench,%d,97,air,121,74,alert,36.9"
          .formatted(id, encounter, patient(), takenAt, respiratoryRate);
    }

    String hl7() {
      var at = DTM.format(takenAt);
      return String.join(
          "\r",
          "MSH|^~\\&|BENCH|HOUSE|DRIFTWARD|HOUSE|" + at + "||ORU^R01|" + id + "|P|2.5.1",
          "PID|1||" + patient(),
          "PV1|1|I|" + "|".repeat(16) + encounter,
          "OBR|1||" + id + "^BENCH|SET^Vital signs^L|||" + at,
          obx(1, "9279-1", respiratoryRate, "/min"),
          obx(2, "2708-6", 97, "%"),
          obx(3, "8480-6", 121, "mm[Hg]"),
          obx(4, "8867-4", 74, "/min"),
          obx(5, "8310-5", 36.9, "Cel"));
    }

    private static String obx(int number, String loinc, double value, String unit) {
      return "OBX|%d|NM|%s^^LN||%s|%s|||||F".formatted(number, loinc, value, unit);
    }

    private String observation(String loinc, double value, String unit) {
      return """
          {"resource":{"resourceType":"Observation","status":"final","identifier":[{"value":"%s-%s"}],\
          "code":{"coding":[{"system":"http://loinc.org","code":"%s"}]},\
          "subject":{"identifier":{"value":"%s"}},"encounter":{"identifier":{"value":"%s"}},\
          "effectiveDateTime":"%s","valueQuantity":{"value":%s,\
          "system":"http://unitsofmeasure.org","code":"%s"}},\
          "request":{"method":"POST","url":"Observation"}}"""
          .formatted(id, loinc, loinc, patient(), encounter, takenAt, value, unit);
    }

    private String patient() {
      return "P-" + encounter.substring(2);
    }
  }
}
