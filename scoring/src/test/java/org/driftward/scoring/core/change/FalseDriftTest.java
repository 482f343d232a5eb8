package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;

/**
 * How often the shipped policy is wrong about stable patients, and how soon it finds a shift. The
 * figures are those of docs/clinical-basis-change.md, from a simulation: independent normal values,
 * spread equal to the catalogue's noise, rounded as they are charted, an hour apart.
 */
class FalseDriftTest {

  private static final int PATIENTS = 200;

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());
  private final Random random = new Random(7);

  /** One vital sign as it is charted. */
  private record Vital(String code, String unit, double mean, double noise, double step) {}

  private static final Vital HEART_RATE = new Vital("heart-rate", "/min", 75, 4, 1);
  private static final Vital[] VITALS = {
    new Vital("respiratory-rate", "/min", 16, 1.5, 1),
    new Vital("oxygen-saturation", "%", 96, 1, 1),
    new Vital("systolic-pressure", "mm[Hg]", 125, 6, 1),
    HEART_RATE,
    new Vital("temperature", "Cel", 36.8, 0.2, 0.1)
  };

  @Test
  void shouldSeldomSeeDriftInStablePatients() {
    int days = 3;
    int onsets = 0;
    int trends = 0;
    for (int patient = 0; patient < PATIENTS; patient++) {
      for (var vital : VITALS) {
        double usual = vital.mean() + 2 * vital.noise() * random.nextGaussian();
        var course = Course.of(detector, vital.code(), vital.unit());
        boolean was = false;
        for (int hour = 0; hour < 24 * days; hour++) {
          course.hourly(value(vital, usual));
          boolean is = course.drift().map(drift -> drift.worse()).orElse(false);
          onsets += is && !was ? 1 : 0;
          was = is;
          trends += course.trend(null, null).map(t -> t.significant()).orElse(false) ? 1 : 0;
        }
      }
    }

    double per100PatientDays = 100.0 * onsets / (PATIENTS * days);
    double shareOfValues = trends / (double) (PATIENTS * VITALS.length * 24 * days);
    assertThat(per100PatientDays).isBetween(10.0, 30.0);
    assertThat(shareOfValues).isBetween(0.002, 0.01);
  }

  @Test
  void shouldFindAShiftOfTwiceTheNoiseWithinADay() {
    int found = 0;
    for (int patient = 0; patient < PATIENTS; patient++) {
      var course = Course.of(detector, HEART_RATE.code(), HEART_RATE.unit());
      for (int hour = 0; hour < 24; hour++) {
        course.hourly(value(HEART_RATE, 75));
      }
      boolean seen = false;
      for (int hour = 0; hour < 24; hour++) {
        course.hourly(value(HEART_RATE, 75 + 2 * HEART_RATE.noise()));
        seen |= course.drift().map(drift -> drift.worse()).orElse(false);
      }
      found += seen ? 1 : 0;
    }

    assertThat(found / (double) PATIENTS).isGreaterThan(0.9);
  }

  private double value(Vital vital, double usual) {
    double value = usual + vital.noise() * random.nextGaussian();
    double charted = Math.round(value / vital.step()) * vital.step();
    return vital.unit().equals("%") ? Math.min(100, charted) : Math.round(charted * 10) / 10.0;
  }
}
