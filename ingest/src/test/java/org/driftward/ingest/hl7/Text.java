package org.driftward.ingest.hl7;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Messages of an invented hospital, built by the fields' numbers in the HL7 v2 standard: chapter 2
 * (MSH), chapter 3 (EVN, PID, PV1, MRG) and chapter 7 (OBR, OBX).
 */
public final class Text {

  private Text() {}

  public static String message(String... segments) {
    return Arrays.stream(segments).collect(Collectors.joining("\r", "", "\r"));
  }

  public static byte[] bytes(String... segments) {
    return message(segments).getBytes(StandardCharsets.UTF_8);
  }

  /** A header as of 11:55 UTC. */
  public static String msh(String event, String id) {
    return msh(event, id, "2.5.1", "20260105115500+0000", "UNICODE UTF-8");
  }

  public static String msh(String event, String id, String version, String at, String charset) {
    return "MSH|^~\\&|GATEWAY|NORTH|DRIFTWARD|HOUSE|"
        + String.join("|", at, "", event, id, "P", version, "", "", "", "", "", charset);
  }

  public static String pid(String patient) {
    return "PID|1||" + patient + "^^^HOUSE^MR||Harrowgate^Sunniva||19480920|F";
  }

  public static String evn(String at) {
    return "EVN||" + at;
  }

  public static String pv1(String place, String visit) {
    return pv1(place, visit, "", "");
  }

  /** PV1-3, PV1-19, PV1-44 and PV1-45. */
  public static String pv1(String place, String visit, String admitted, String discharged) {
    return "PV1|1|I|"
        + place
        + "|".repeat(16)
        + visit
        + "|".repeat(25)
        + admitted
        + "|"
        + discharged;
  }

  public static String obr(String filler, String at) {
    return "OBR|1||" + filler + "|SET^Vital signs^L|||" + at;
  }

  /** OBX-1 to OBX-6, OBX-11 and OBX-14. */
  public static String obx(
      String type, String code, String value, String unit, String status, String at) {
    return String.join(
        "|", "OBX", "1", type, code, "", value, unit, "", "", "", "", status, "", "", at);
  }

  /** A heart rate, LOINC 8867-4, at 11:50 UTC. */
  public static String heartRate(String value) {
    return obx("NM", "8867-4^Heart rate^LN", value, "/min", "F", "20260105115000+0000");
  }

  /** ORU^R01 of the stay and its patient {@code P-<stay>}. */
  public static String results(String id, String stay, String... obx) {
    var head =
        Stream.of(
            msh("ORU^R01^ORU_R01", id),
            pid("P-" + stay),
            pv1("LINDEN^12^A", stay),
            obr("F-1^GATEWAY", "20260105115000+0000"));
    return message(Stream.concat(head, Arrays.stream(obx)).toArray(String[]::new));
  }
}
