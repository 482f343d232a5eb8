package org.driftward.ingest.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.fhir.ucum.UcumEssenceService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of a sane catalogue. */
class ShippedCatalogueTest {

  private static final List<String> EXAMINATION =
      List.of(
          "general",
          "vital-signs",
          "head",
          "eyes",
          "ears",
          "nose",
          "mouth-throat",
          "neck",
          "cranial-nerves",
          "chest",
          "heart",
          "limbs",
          "pulses",
          "abdomen",
          "elimination",
          "skin",
          "reflexes",
          "pain",
          "lines",
          "special",
          "note");

  private static Stream<CatalogueEntry> entries() {
    return Catalogue.shipped().entries().stream();
  }

  @Test
  void shouldHoldAWholeExaminationInItsOrder() {
    assertThat(entries()).hasSizeGreaterThanOrEqualTo(120);
    assertThat(entries().map(CatalogueEntry::region).distinct())
        .containsExactlyElementsOf(EXAMINATION);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "orientation-person",
        "orientation-place",
        "orientation-time",
        "orientation-situation",
        "pupil-size",
        "pupil-reaction",
        "pupil-accommodation",
        "tonsil-grade",
        "lymph-nodes",
        "cranial-nerve-1",
        "visual-field",
        "cranial-nerve-3",
        "cranial-nerve-4",
        "cranial-nerve-5-sensation",
        "cranial-nerve-6",
        "cranial-nerve-7",
        "cranial-nerve-8-hearing",
        "cranial-nerve-9",
        "cranial-nerve-10",
        "cranial-nerve-11",
        "cranial-nerve-12",
        "breath-sounds",
        "wheeze",
        "crackles",
        "work-of-breathing",
        "heart-rhythm",
        "murmur",
        "apical-rate",
        "muscle-strength",
        "range-of-movement",
        "limb-sensation",
        "limb-warmth",
        "limb-colour",
        "capillary-refill",
        "oedema",
        "pulse-amplitude",
        "bowel-sounds",
        "abdominal-tenderness",
        "abdominal-distension",
        "last-stool",
        "urine-output",
        "urine-output-period",
        "skin-turgor",
        "skin-integrity",
        "pressure-area",
        "tendon-reflex",
        "pain-score",
        "line-site",
        "note",
      })
  void shouldHoldEveryFindingOfTheExamination(String code) {
    assertThat(Catalogue.shipped().find(code)).isPresent();
  }

  /** Scale ends: docs/clinical-basis.md, physical-assessment scales. */
  @ParameterizedTest
  @CsvSource({
    "muscle-strength,0,5",
    "pulse-amplitude,0,4",
    "oedema,0,4",
    "tendon-reflex,0,4",
    "tonsil-grade,0,4",
    "pain-score,0,10",
    "pressure-risk-total,6,23",
    "gcs-eye,1,4",
    "gcs-verbal,1,5",
    "gcs-motor,1,6",
    "gcs-total,3,15",
  })
  void shouldGradeOnThePublishedScale(String code, int low, int high) {
    var accepted = Catalogue.shipped().find(code).orElseThrow().accepted();

    assertThat(accepted.low().intValueExact()).isEqualTo(low);
    assertThat(accepted.high().intValueExact()).isEqualTo(high);
  }

  /** HL7 FHIR R4 vital signs, US Core pulse oximetry, and LOINC term pages. */
  @ParameterizedTest
  @CsvSource({
    "respiratory-rate,9279-1,/min",
    "heart-rate,8867-4,/min",
    "oxygen-saturation,2708-6,%",
    "temperature,8310-5,Cel",
    "systolic-pressure,8480-6,mm[Hg]",
    "diastolic-pressure,8462-4,mm[Hg]",
    "mean-arterial-pressure,8478-0,mm[Hg]",
    "oxygen-flow,3151-8,L/min",
    "inspired-oxygen-fraction,3150-0,%",
    "body-weight,29463-7,kg",
    "body-height,8302-2,cm",
    "capillary-refill,44963-7,s",
  })
  void shouldCarryThePublishedCodeAndUnit(String code, String loinc, String unit) {
    var entry = Catalogue.shipped().find(code).orElseThrow();

    assertThat(entry.loinc()).isEqualTo(loinc);
    assertThat(entry.unit()).isEqualTo(unit);
  }

  @Test
  void shouldNameEntriesForPeopleAndPrograms() {
    assertThat(entries())
        .allSatisfy(
            entry -> {
              assertThat(Stream.concat(Stream.of(entry.code()), entry.sites().stream()))
                  .allMatch(word -> word.matches("[a-z0-9]+(-[a-z0-9]+)*"));
              assertThat(entry.options()).allMatch(word -> word.matches("[a-z0-9]+(-[a-z0-9]+)*"));
              assertThat(entry.name()).matches("\\p{Lu}.*[^.]");
              assertThat(entry.source()).isNotBlank();
              assertThat(entry.sites()).doesNotHaveDuplicates();
              assertThat(entry.options()).doesNotHaveDuplicates();
            });
  }

  @Test
  void shouldGiveNoNameAndNoLoincCodeTwice() {
    assertThat(entries().map(CatalogueEntry::name)).doesNotHaveDuplicates();
    assertThat(entries().map(CatalogueEntry::loinc).filter(java.util.Objects::nonNull))
        .doesNotHaveDuplicates();
  }

  /** LOINC Users' Guide, appendix on check digits: mod 10. */
  @Test
  void shouldCarryNoLoincCodeWithAWrongCheckDigit() {
    assertThat(entries())
        .allSatisfy(
            entry -> {
              if (entry.loinc() != null) {
                assertThat(entry.loinc()).matches("\\d{1,5}-\\d");
                assertThat(hasRightCheckDigit(entry.loinc())).isTrue();
              }
            });
  }

  @Test
  void shouldKnowAWrongCheckDigit() {
    assertThat(hasRightCheckDigit("3150-0")).isTrue();
    assertThat(hasRightCheckDigit("3150-6")).isFalse();
  }

  /** Against the UCUM table of the FHIR project's library, which nobody here wrote. */
  @Test
  void shouldMeasureInUnitsOfUcum() throws Exception {
    try (var essence = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
      var ucum = new UcumEssenceService(essence);
      assertThat(ucum.validate("mmHg")).isNotNull();
      assertThat(entries().filter(entry -> entry.unit() != null))
          .allSatisfy(entry -> assertThat(ucum.validate(entry.unit())).isNull());
    }
  }

  @Test
  void shouldExpectOnlyWhatItAccepts() {
    assertThat(entries())
        .allSatisfy(
            entry -> {
              boolean number = entry.kind() == Kind.QUANTITY || entry.kind() == Kind.GRADE;
              assertThat(entry.accepted() != null).isEqualTo(number);
              if (entry.expected() != null) {
                assertThat(entry.accepted().holds(entry.expected().low())).isTrue();
                assertThat(entry.accepted().holds(entry.expected().high())).isTrue();
              }
              entry
                  .scale()
                  .keySet()
                  .forEach(
                      grade -> {
                        assertThat(entry.kind()).isEqualTo(Kind.GRADE);
                        assertThat(entry.accepted().holds(java.math.BigDecimal.valueOf(grade)))
                            .isTrue();
                      });
            });
  }

  @Test
  void shouldSayWhichFunctionAChangeSpeaksAbout() {
    assertThat(entries())
        .allSatisfy(
            entry -> {
              if (entry.change() != null) {
                assertThat(entry.change()).isPositive();
                assertThat(entry.group()).isNotNull();
                assertThat(entry.worse()).isNotEqualTo(Worse.NONE);
              }
              if (entry.kind() == Kind.CODED && entry.change() != null) {
                assertThat(entry.change().intValueExact()).isLessThan(entry.options().size());
              }
            });
  }

  @Test
  void shouldKeepABaselineOnlyOfQuantities() {
    assertThat(entries())
        .allSatisfy(
            entry -> {
              if (entry.noise() != null) {
                assertThat(entry.kind()).isEqualTo(Kind.QUANTITY);
                assertThat(entry.noise()).isPositive();
              }
            });
  }

  @Test
  void shouldOfferAUsualValueOnlyWhereThereIsOne() {
    var catalogue = Catalogue.shipped();

    assertThat(catalogue.find("pulse-amplitude").orElseThrow().usual().orElseThrow().plain())
        .isEqualTo("2");
    assertThat(catalogue.find("breath-sounds").orElseThrow().usual().orElseThrow().plain())
        .isEqualTo("clear");
    assertThat(catalogue.find("temperature").orElseThrow().usual()).isEmpty();
    assertThat(catalogue.find("teeth").orElseThrow().usual()).isEmpty();
  }

  private static boolean hasRightCheckDigit(String loinc) {
    var parts = loinc.split("-", -1);
    int sum = 0;
    for (int fromRight = 0; fromRight < parts[0].length(); fromRight++) {
      int digit = parts[0].charAt(parts[0].length() - 1 - fromRight) - '0';
      int weighted = fromRight % 2 == 0 ? 2 * digit : digit;
      sum += weighted > 9 ? weighted - 9 : weighted;
    }
    return (10 - sum % 10) % 10 == Integer.parseInt(parts[1]);
  }
}
