package org.driftward.deploy.whole;

import java.time.Instant;
import java.util.Locale;

/**
 * Complete sets of vital signs as JSON. Their NEWS2 totals follow from the table of the Royal
 * College of Physicians (2017), on oxygen scale 1.
 */
final class Sets {

  private Sets() {}

  /** NEWS2 0: 16/min, 97 % on air, 120 mmHg, 70/min, alert, 36.8 °C. */
  static String well(String id, String encounter, Instant takenAt) {
    return set(id, encounter, takenAt, 16, 97, 120, 70, "alert", 36.8);
  }

  /** NEWS2 9: 26/min scores 3, 93 % on air 2, 105 mmHg 1, 118/min 2, alert 0, 38.6 °C 1. */
  static String ill(String id, String encounter, Instant takenAt) {
    return set(id, encounter, takenAt, 26, 93, 105, 118, "alert", 38.6);
  }

  /**
   * NEWS2 13: 29/min scores 3, 91 % on air 3, 192 mmHg 0, 111/min 2, new confusion 3, 39.1 °C 2.
   */
  static String veryIll(String id, String encounter, Instant takenAt) {
    return set(id, encounter, takenAt, 29, 91, 192, 111, "confused", 39.1);
  }

  private static String set(
      String id,
      String encounter,
      Instant takenAt,
      int respiratoryRate,
      int saturation,
      int systolic,
      int heartRate,
      String consciousness,
      double temperature) {
    return String.format(
        Locale.ROOT,
        """
        {"id":"%s","revision":1,"status":"final","encounter":"%s","patient":"P-%s",
         "takenAt":"%s","recordedAt":"%s","source":"bedside","by":"charge",
         "findings":[
          {"code":"respiratory-rate","value":%d,"unit":"/min"},
          {"code":"oxygen-saturation","value":%d,"unit":"%%"},
          {"code":"inspired-oxygen","coded":"air"},
          {"code":"systolic-pressure","value":%d,"unit":"mm[Hg]"},
          {"code":"heart-rate","value":%d,"unit":"/min"},
          {"code":"consciousness","coded":"%s"},
          {"code":"temperature","value":%.1f,"unit":"Cel"}]}
        """,
        id,
        encounter,
        encounter,
        takenAt,
        takenAt,
        respiratoryRate,
        saturation,
        systolic,
        heartRate,
        consciousness,
        temperature);
  }
}
