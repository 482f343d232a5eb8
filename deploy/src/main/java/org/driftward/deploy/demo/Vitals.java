package org.driftward.deploy.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.driftward.ingest.contract.Finding;

/**
 * The vital signs of an invented patient at one moment, before rounding to chart resolution.
 *
 * @param respiration breaths per minute
 * @param saturation percent
 * @param oxygen flow in litres per minute; 0 is air
 * @param systolic mmHg
 * @param diastolic mmHg
 * @param pulse beats per minute
 * @param consciousness a code of the catalogue
 * @param temperature degrees Celsius
 */
record Vitals(
    double respiration,
    double saturation,
    double oxygen,
    double systolic,
    double diastolic,
    double pulse,
    String consciousness,
    double temperature) {

  /**
   * The point {@code share} of the way to {@code next}. Consciousness and oxygen flow change in
   * steps: they are the earlier ones until the next moment is reached.
   */
  Vitals towards(Vitals next, double share) {
    return new Vitals(
        between(respiration, next.respiration, share),
        between(saturation, next.saturation, share),
        oxygen,
        between(systolic, next.systolic, share),
        between(diastolic, next.diastolic, share),
        between(pulse, next.pulse, share),
        consciousness,
        between(temperature, next.temperature, share));
  }

  /** The same patient measured once: with the small differences that every measurement has. */
  Vitals measured(RandomGenerator chance) {
    return new Vitals(
        respiration + chance.nextGaussian() * 0.7,
        Math.min(100, saturation + chance.nextGaussian() * 0.5),
        oxygen,
        systolic + chance.nextGaussian() * 3,
        diastolic + chance.nextGaussian() * 2,
        pulse + chance.nextGaussian() * 2,
        consciousness,
        temperature + chance.nextGaussian() * 0.1);
  }

  /** As a nurse charts them: whole numbers, temperature to one decimal. */
  List<Finding> findings() {
    var findings = new ArrayList<Finding>();
    findings.add(Finding.quantity("respiratory-rate", rounded(respiration, 0), "/min"));
    findings.add(Finding.quantity("oxygen-saturation", rounded(saturation, 0), "%"));
    findings.add(Finding.coded("inspired-oxygen", oxygen > 0 ? "oxygen" : "air"));
    if (oxygen > 0) {
      findings.add(Finding.quantity("oxygen-flow", rounded(oxygen, 0), "L/min"));
    }
    findings.add(Finding.quantity("systolic-pressure", rounded(systolic, 0), "mm[Hg]"));
    findings.add(Finding.quantity("diastolic-pressure", rounded(diastolic, 0), "mm[Hg]"));
    findings.add(Finding.quantity("heart-rate", rounded(pulse, 0), "/min"));
    findings.add(Finding.coded("consciousness", consciousness));
    findings.add(Finding.quantity("temperature", rounded(temperature, 1), "Cel"));
    return List.copyOf(findings);
  }

  private static double between(double from, double to, double share) {
    return from + (to - from) * share;
  }

  private static String rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
