package org.driftward.dashboard.screen.entry;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.driftward.dashboard.Samples;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.junit.jupiter.api.Test;

/** What one touch records is what a look and a hand establish. Common practice, no source. */
class OneTouchTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();

  /** The worries, pains and whatever else is asked; instruments by what is held in the hand. */
  private static final Set<String> ASKED_OR_BY_INSTRUMENT =
      Set.of(
          "staff-concern",
          "patient-concern",
          "family-concern",
          "sleep",
          "mood",
          "headache",
          "chest-pain",
          "palpitations",
          "nausea",
          "appetite",
          "breath-sounds",
          "percussion-note",
          "pulse-doppler",
          "eardrum",
          "bowel-sounds",
          "murmur",
          "pupil-reaction",
          "attention");

  private final OneTouch touch = OneTouch.of(CATALOGUE);

  @Test
  void shouldRecordNoInputOfAnyScore() throws Exception {
    var inputs = new TreeSet<String>();
    for (var score :
        new String[] {
          "gcs",
          "kdigo-urine",
          "maternal-trigger",
          "mews",
          "modified-shock-index",
          "news2",
          "pews-brighton",
          "qsofa",
          "rox",
          "shock-index",
          "sirs"
        }) {
      try (var in = Catalogue.class.getResourceAsStream("/scores/" + score + ".yaml")) {
        var matcher =
            Pattern.compile("(?:code|finding): ([a-z-]+)")
                .matcher(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        while (matcher.find()) {
          inputs.add(matcher.group(1));
        }
      }
    }

    assertThat(inputs).contains("consciousness", "inspired-oxygen", "gcs-eye", "staff-concern");
    assertThat(codes()).doesNotContainAnyElementsOf(inputs);
  }

  @Test
  void shouldRecordNothingThatIsMeasuredAskedOrNeedsAnInstrument() {
    assertThat(codes()).doesNotContainAnyElementsOf(ASKED_OR_BY_INSTRUMENT);
    assertThat(CATALOGUE.entries())
        .filteredOn(entry -> codes().contains(entry.code()))
        .allMatch(entry -> entry.kind() != Kind.QUANTITY)
        .noneMatch(entry -> Set.of("pain", "vital-signs", "special").contains(entry.region()));
  }

  @Test
  void shouldRecordAtMostTenFindingsInARegionAndFarFewerThanAnExaminationHas() {
    var sizes = CATALOGUE.entries().stream().map(CatalogueEntry::region).distinct().map(touch::in);

    assertThat(sizes).allSatisfy(region -> assertThat(region.size()).isLessThanOrEqualTo(10));
    assertThat(touch.values().values().stream().mapToInt(Map::size).sum()).isBetween(20, 60);
  }

  /** Nineteen touches once recorded 488 findings, oxygen and consciousness among them. */
  @Test
  void shouldLeaveAPatientOnOxygenOnOxygen() {
    var regions = CATALOGUE.entries().stream().map(CatalogueEntry::region).distinct().toList();

    var recorded = EnteredForm.read(CATALOGUE, Map.of(), regions, touch).findings();

    assertThat(recorded)
        .extracting(Finding::code)
        .doesNotContain("inspired-oxygen", "oxygen-device", "consciousness", "gcs-verbal");
    assertThat(recorded).hasSizeLessThanOrEqualTo(60);
  }

  @Test
  void shouldLeaveOutAndAskWhatWasDifferentLastTime() {
    var pale = taken(Finding.coded("skin-colour", "pale"));

    var of = OneTouch.of(CATALOGUE, EntryScreenTest.record(pale));

    assertThat(of.in("skin")).doesNotContainKey(FindingKey.of("skin-colour"));
    assertThat(of.in("skin")).containsKey(FindingKey.of("skin-warmth"));
    assertThat(of.asked("skin")).hasSize(1).first().asString().contains("was pale");
  }

  @Test
  void shouldLeaveOutOneFootAndOfferTheOther() {
    var left = new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT);
    var right = new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.RIGHT);
    var lost = taken(new Finding(left, new FindingValue.Grade(0)));

    var of = OneTouch.of(CATALOGUE, EntryScreenTest.record(lost));

    assertThat(of.in("pulses")).doesNotContainKey(left).containsKey(right);
  }

  private Set<String> codes() {
    var codes = new TreeSet<String>();
    touch
        .values()
        .values()
        .forEach(region -> region.keySet().forEach(key -> codes.add(key.code())));
    return codes;
  }

  private static Assessment taken(Finding finding) {
    var sample = Samples.assessment("V", "A-1", 1, 0);
    return new Assessment(
        "A-1",
        1,
        sample.status(),
        "V",
        "P-V",
        sample.takenAt(),
        sample.recordedAt(),
        sample.source(),
        "ines.varga",
        null,
        List.of(finding));
  }
}
