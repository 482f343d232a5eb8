package org.driftward.dashboard.screen.entry;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.driftward.dashboard.Samples;
import org.driftward.dashboard.core.Cards;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The page model, held against the catalogue it is derived from. */
class EntryScreenTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();

  @Test
  void shouldAskForEveryFindingOfTheCatalogueAtEveryPlaceInTheOrderOfTheExamination() {
    var expected =
        CATALOGUE.entries().stream().flatMap(EntryScreenTest::keys).map(FieldName::of).toList();

    var names = fields(screen(CATALOGUE, null, null)).map(EntryField::name).toList();

    assertThat(names).containsExactlyElementsOf(expected).doesNotHaveDuplicates();
    assertThat(names).hasSizeGreaterThan(500);
  }

  @Test
  void shouldTakeUpAFindingThatIsOnlyAddedToTheCatalogue() {
    var extra =
        new CatalogueEntry(
            "humming",
            "Humming",
            "humours",
            Kind.GRADE,
            null,
            List.of("throat"),
            true,
            null,
            new Range(BigDecimal.ZERO, BigDecimal.valueOf(3)),
            new Range(BigDecimal.ONE, BigDecimal.ONE),
            List.of(),
            List.of(),
            Worse.HIGHER,
            null,
            null,
            null,
            "made up for this test",
            new TreeMap<>(Map.of(1, "softly")),
            null,
            null);

    var regions = screen(withEntry(extra), null, null).regions();

    var region = regions.get(regions.size() - 1);
    assertThat(region.title()).isEqualTo("Humours");
    assertThat(region.expected()).isEmpty();
    var left = region.rows().get(0).places().get(0).fields().get(0);
    assertThat(left.name()).isEqualTo("humming/throat/left");
    assertThat(left.usual()).isEmpty();
    assertThat(left.options()).extracting(EntryOption::words).containsExactly("0", "1", "2", "3");
    assertThat(left.options().get(1).meaning()).isEqualTo("softly");
  }

  /** What is shown beside the touch must be what the touch records, no more and no less. */
  @Test
  void shouldSayExactlyWhatOneTouchRecords() {
    for (var region : screen(CATALOGUE, null, null).regions()) {
      var recorded =
          EnteredForm.read(CATALOGUE, Map.of(), List.of(region.id()), OneTouch.of(CATALOGUE))
              .findings();

      assertThat(region.usualCount()).as(region.id()).isEqualTo(recorded.size());
      assertThat(recorded)
          .allSatisfy(
              finding ->
                  assertThat(finding.value())
                      .isEqualTo(
                          CATALOGUE.find(finding.code()).flatMap(CatalogueEntry::usual).get()));
    }
  }

  @Test
  void shouldShowTheLastValueItsTimeAndWhoTookIt() {
    var earlier = assessment("A-1", 0, Finding.quantity("heart-rate", "84", "/min"));
    var later = assessment("A-2", 5, Finding.coded("consciousness", "voice"));

    var screen = screen(CATALOGUE, null, null, later, earlier);

    assertThat(field(screen, "heart-rate").before()).isEqualTo("84 /min, 03:00 by Ines Varga");
    var consciousness = field(screen, "consciousness");
    assertThat(consciousness.before()).isEqualTo("voice, 03:05 by Ines Varga");
    assertThat(consciousness.options())
        .filteredOn(EntryOption::before)
        .extracting(EntryOption::value)
        .containsExactly("voice");
    assertThat(consciousness.options()).noneMatch(EntryOption::chosen);
  }

  @Test
  void shouldNotShowWhatWasRetractedAsTheLastValue() {
    var retracted = Samples.retracted("V", "A-2", 2, 5);
    var kept = assessment("A-1", 0, Finding.quantity("heart-rate", "84", "/min"));

    var screen = screen(CATALOGUE, null, null, retracted, kept);

    assertThat(field(screen, "heart-rate").before()).startsWith("84 /min, 03:00");
  }

  @Test
  void shouldFillInWhatIsBeingCorrectedUnderItsNextRevision() {
    var wrong =
        assessment(
            "A-1",
            0,
            Finding.quantity("temperature", "73.6", "Cel"),
            Finding.coded("consciousness", "alert"));

    var screen = screen(CATALOGUE, wrong, null, wrong);

    assertThat(screen.assessment()).isEqualTo("A-1");
    assertThat(screen.revision()).isEqualTo(2);
    assertThat(screen.correction()).isNotNull();
    assertThat(field(screen, "temperature").value()).isEqualTo("73.6");
    assertThat(field(screen, "consciousness").options())
        .filteredOn(EntryOption::chosen)
        .extracting(EntryOption::value)
        .containsExactly("alert");
  }

  /** All six core observations of NICE CG50 and oxygen: Next passes none of them over. */
  @Test
  void shouldLeadThroughEveryCoreObservationAndOxygen() {
    var screen = screen(CATALOGUE, null, "vital-signs");

    assertThat(screen.regions())
        .filteredOn(EntryRegion::shown)
        .extracting(EntryRegion::id)
        .containsExactly("vital-signs");
    assertThat(fields(screen).filter(EntryField::next).map(EntryField::name))
        .startsWith(
            "respiratory-rate",
            "oxygen-saturation",
            "inspired-oxygen",
            "systolic-pressure",
            "diastolic-pressure",
            "heart-rate",
            "consciousness",
            "temperature");
  }

  @Test
  void shouldShowTheWholeExaminationForARegionThatNobodyKnows() {
    var screen = screen(CATALOGUE, null, "elbows");

    assertThat(screen.whole()).isTrue();
    assertThat(screen.regions()).allMatch(EntryRegion::shown);
  }

  private static EntryField field(EntryScreen screen, String name) {
    return fields(screen).filter(field -> field.name().equals(name)).findFirst().orElseThrow();
  }

  private static Stream<EntryField> fields(EntryScreen screen) {
    return screen.regions().stream()
        .flatMap(region -> region.rows().stream())
        .flatMap(row -> row.places().stream())
        .flatMap(place -> place.fields().stream());
  }

  private static Stream<FindingKey> keys(CatalogueEntry entry) {
    var sites = entry.sites().isEmpty() ? Stream.of("") : entry.sites().stream();
    return sites
        .map(site -> site.isEmpty() ? null : site)
        .flatMap(
            site ->
                entry.sided()
                    ? Stream.of(Side.LEFT, Side.RIGHT)
                        .map(side -> new FindingKey(entry.code(), site, side))
                    : Stream.of(new FindingKey(entry.code(), site, null)));
  }

  private static Catalogue withEntry(CatalogueEntry extra) {
    var entries = Stream.concat(CATALOGUE.entries().stream(), Stream.of(extra)).toList();
    return new Catalogue() {
      @Override
      public List<CatalogueEntry> entries() {
        return entries;
      }

      @Override
      public Optional<CatalogueEntry> find(String code) {
        return entries.stream().filter(entry -> entry.code().equals(code)).findFirst();
      }
    };
  }

  private static Assessment assessment(String id, int minute, Finding... findings) {
    var sample = Samples.assessment("V", id, 1, minute);
    return new Assessment(
        id,
        1,
        sample.status(),
        "V",
        "P-V",
        sample.takenAt(),
        sample.recordedAt(),
        sample.source(),
        "ines.varga",
        null,
        List.of(findings));
  }

  private static EntryScreen screen(
      Catalogue catalogue,
      @Nullable Assessment correct,
      @Nullable String only,
      Assessment... newestFirst) {
    return EntryScreen.of(
        record(newestFirst),
        catalogue,
        "A-new",
        correct,
        only,
        account -> account.equals("ines.varga") ? "Ines Varga" : account,
        ZoneOffset.UTC);
  }

  static StayRecord record(Assessment... newestFirst) {
    var encounter = Samples.encounter("V", "W1", "3", 1);
    var now = Samples.at(10);
    var known = new Known(encounter, null, null, null, List.of());
    var card = new Cards(BigDecimal.valueOf(5)).card(known, List.of(), now);
    return new StayRecord(
        new PatientView(now, card, encounter, null, null, null, List.of()),
        new PatientHistory("V", List.of(newestFirst), List.of(), true));
  }
}
