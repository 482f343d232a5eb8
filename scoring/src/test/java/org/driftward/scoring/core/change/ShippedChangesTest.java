package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the shipped catalogue and policy call a change, from both sides of every edge. Scales: pulse
 * amplitude 0 to 4 after Bates, strength 0 to 5 of the Medical Research Council, pitting oedema 0
 * to 4 common practice; capillary refill: Schriger and Baraff 1988 for how widely healthy people
 * differ, so that it is compared with the patient's own; new confusion: RCP NEWS2 2017. The
 * smallest change that counts is common practice, no source, unless a row says otherwise.
 */
class ShippedChangesTest {

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());

  /** Usual values, then one that is a change, then one that is none. */
  @ParameterizedTest
  @CsvSource({
    // Orientation, four spheres: common practice.
    "orientation-person, oriented oriented, disoriented, oriented",
    "orientation-place, oriented oriented, uncertain, oriented",
    "orientation-time, oriented oriented, disoriented, oriented",
    "orientation-situation, uncertain uncertain, disoriented, oriented",
    "consciousness, alert alert, confused, alert",
    // Long confused: what is new for this patient is worse than that.
    "consciousness, confused confused, voice, confused",
    // A difference of up to 1 mm is usual in one person of five: a new one counts.
    "pupil-difference, 0 0, 1, 0.9",
    "pupil-difference, 1 1, 2, 1.9",
    "muscle-strength, 5 5, 4, 5",
    "muscle-strength, 3 3, 2, 4",
    "pulse-amplitude, 2 2, 1, 2",
    "pulse-amplitude, 2 2, 0, 3",
    "pulse-amplitude, 1 1, 0, 1",
    "capillary-refill, 1.5 1.5, 2.5, 2.4",
    "capillary-refill, 3 3, 4, 3.9",
    "oedema, 0 0, 1, 0",
    "oedema, 2 2, 3, 2",
    "wheeze, absent absent, breathing-out, absent",
    "crackles, absent absent, fine, absent",
    "crackles, fine fine, coarse, absent",
    "rattle, absent absent, present, absent",
    "pleural-rub, absent absent, present, absent",
    "breath-sounds, clear clear, reduced, clear",
    "bowel-sounds, active active, absent, active",
    "bowel-sounds, hypoactive hypoactive, absent, hypoactive",
    // Apical 106 and radial 93 are a deficit of 13: nursing handbooks.
    "pulse-deficit, 0 2, 13, 10",
    // 25 mL/h of the shipped policy.
    "urine-rate, 60 60, 35, 36",
  })
  void shouldTellAChangeFromNone(String code, String usual, String changed, String unchanged) {
    assertThat(after(code, usual, changed).changed()).as(changed).isPresent();
    assertThat(after(code, usual, unchanged).changed()).as(unchanged).isEmpty();
  }

  private Course after(String code, String usual, String newest) {
    var entry = Catalogue.shipped().find(code).orElse(null);
    var course = new Course(detector, key(code, entry), entry == null ? "mL/h" : entry.unit());
    Arrays.stream(usual.split(" ")).forEach(value -> tell(course, entry, value));
    tell(course, entry, newest);
    return course;
  }

  private static FindingKey key(String code, @Nullable CatalogueEntry entry) {
    if (entry == null) {
      return FindingKey.of(code);
    }
    var site = entry.sites().isEmpty() ? null : entry.sites().get(0);
    return new FindingKey(code, site, entry.sided() ? Side.LEFT : null);
  }

  private static void tell(Course course, @Nullable CatalogueEntry entry, String value) {
    if (entry != null && entry.kind() == Kind.CODED) {
      assertThat(entry.options()).contains(value);
      course.hourly(value);
    } else {
      course.hourly(Double.parseDouble(value));
    }
  }
}
