package org.driftward.scoring.core.score;

import java.util.Set;
import org.driftward.ingest.contract.Side;

/** Complete sets of observations to start from. */
final class Patients {

  private Patients() {}

  /** An adult whose every score is at its best; NEWS2 0. */
  static Bedside well() {
    return Bedside.adult()
        .with("respiratory-rate", 14)
        .with("oxygen-saturation", 97)
        .with("inspired-oxygen", "air")
        .with("systolic-pressure", 120)
        .with("diastolic-pressure", 80)
        .with("heart-rate", 70)
        .with("consciousness", "alert")
        .with("temperature", "36.8");
  }

  /** A woman in pregnancy without any trigger. */
  static Bedside pregnant() {
    return well()
        .as(new Subject(30, 1, Set.of("pregnant")))
        .with("staff-concern", "none")
        .with("fetal-heart-rate", 140)
        .with("pain-out-of-proportion", "absent");
  }

  /** A child of this age, well, with pulse and breathing in the middle of the age's range. */
  static Bedside child(int years, int heartRate, int respiratoryRate) {
    return Bedside.adult()
        .as(Subject.ofAge(years))
        .with("child-behaviour", "appropriate")
        .with("child-colour", "pink")
        .at("capillary-refill", "hand", Side.RIGHT, 1)
        .with("heart-rate", heartRate)
        .with("respiratory-rate", respiratoryRate)
        .with("child-breathing-effort", "normal")
        .with("inspired-oxygen", "air")
        .with("nebulisers", "none")
        .with("vomiting", "none");
  }

  /**
   * Respiration, saturation, air or oxygen, systolic pressure, pulse, consciousness, temperature.
   */
  static Bedside set(
      int respiration,
      int saturation,
      String gas,
      int systolic,
      int pulse,
      String acvpu,
      String t) {
    return Bedside.adult()
        .with("respiratory-rate", respiration)
        .with("oxygen-saturation", saturation)
        .with("inspired-oxygen", gas)
        .with("systolic-pressure", systolic)
        .with("heart-rate", pulse)
        .with("consciousness", acvpu)
        .with("temperature", t);
  }
}
