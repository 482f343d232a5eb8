package org.driftward.ingest.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.core.mapping.Meaning;
import org.driftward.ingest.unit.UcumConversion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CodeMapFileTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();

  @TempDir Path directory;

  @Test
  void shouldKnowTheLoincCodesOfTheCatalogueWithoutAnyRow() {
    // LOINC 8867-4 is "Heart rate": loinc.org, and HL7 FHIR R4 vital signs profiles.
    var meaning = CodeTable.of(CATALOGUE).find(code("any", "LN", "8867-4"));

    assertThat(meaning.map(Meaning::finding)).contains("heart-rate");
  }

  @Test
  void shouldReadTheShippedFile() {
    var shipped = CodeMapFile.shipped(ShippedCodes.RULES);

    assertThat(shipped.find(code("any", "LN", "67775-7")).flatMap(m -> m.option("ALERT ")))
        .contains("alert");
    assertThat(shipped.unit("bpm")).contains("/min");
    assertThat(shipped.unit("furlong")).isEmpty();
  }

  @Test
  void shouldMeanOnlyUnitsThatUcumKnows() {
    var shipped = CodeMapFile.shipped(ShippedCodes.RULES);
    var units = new UcumConversion();
    var words = List.of("bpm", "beats/min", "mmHg", "mm(hg)", "cel", "DegC", "degF", "percent");

    // A unit of UCUM converts to some unit of the catalogue.
    assertThat(words)
        .allSatisfy(
            word ->
                assertThat(List.of("/min", "mm[Hg]", "Cel", "%"))
                    .anyMatch(
                        ours ->
                            units
                                .convert(
                                    java.math.BigDecimal.ONE,
                                    shipped.unit(word).orElseThrow(),
                                    ours)
                                .isPresent()));
  }

  @Test
  void shouldPreferTheRowOfTheFeed() throws IOException {
    var map =
        read(
            """
            codes:
              - {code: HR, finding: heart-rate}
              - {code: HR, finding: respiratory-rate, source: "hl7:ODD|NORTH", unit: "/min"}
            """);

    assertThat(map.find(code("hl7:ODD|NORTH", "", "HR")).map(Meaning::finding))
        .contains("respiratory-rate");
    assertThat(map.find(code("hl7:OTHER|NORTH", "", "HR")).map(Meaning::finding))
        .contains("heart-rate");
  }

  @Test
  void shouldReadSiteAndSide() throws IOException {
    var map =
        read(
            """
            codes:
              - {system: L, code: DPL, finding: pulse-amplitude, site: dorsalis-pedis, side: left}
            """);

    assertThat(map.find(code("any", "L", "DPL")))
        .hasValueSatisfying(
            meaning -> {
              assertThat(meaning.site()).isEqualTo("dorsalis-pedis");
              assertThat(meaning.side()).isEqualTo(Side.LEFT);
            });
  }

  @Test
  void shouldAskTheNextMapWhereTheFirstIsSilent() throws IOException {
    var map =
        CodeMap.firstOf(
            List.of(CodeTable.of(CATALOGUE), read("codes: [{code: T, finding: temperature}]")));

    assertThat(map.find(code("any", "", "T")).map(Meaning::finding)).contains("temperature");
  }

  @Test
  void shouldLetTheSitesOwnRowGoBeforeTheCataloguesCode() throws IOException {
    // LOINC 8867-4 is "Heart rate"; a site may have to read what its gateway really sends under it.
    var map =
        CodeMap.firstOf(
            List.of(
                read("codes: [{system: LN, code: 8867-4, finding: apical-rate}]"),
                CodeTable.of(CATALOGUE)));

    assertThat(map.find(code("any", "http://loinc.org", "8867-4")).map(Meaning::finding))
        .contains("apical-rate");
  }

  /** Names of LOINC and SNOMED CT in HL7 table 0396, and in FHIR R4, "Using Codes in Resources". */
  @Test
  void shouldKnowOneSystemByTheNamesOfBothStandards() {
    var shipped = CodeMapFile.shipped(ShippedCodes.RULES);

    assertThat(shipped.find(code("any", "http://loinc.org", "59408-5")))
        .isEqualTo(shipped.find(code("any", "LN", "59408-5")))
        .isPresent();
    assertThat(shipped.answer("http://snomed.info/sct", "248234008", "consciousness"))
        .isEqualTo(shipped.answer("SCT", "248234008", "consciousness"))
        .contains("alert");
    assertThat(shipped.isPanel("http://loinc.org", "85354-9")).isTrue();
    assertThat(shipped.isPanel("http://loinc.org", "8480-6")).isFalse();
  }

  @Test
  void shouldReadTheUnitWordsOfOneCode() throws IOException {
    var map = read("codes: [{code: HF, finding: heart-rate, units: {Schlaege: '/min'}}]");

    assertThat(map.find(code("any", "", "HF")).flatMap(meaning -> meaning.ucum("Schlaege")))
        .contains("/min");
    assertThat(map.unit("Schlaege")).as("with other codes").isEmpty();
  }

  @Test
  void shouldRefuseARowThatTheCatalogueContradicts() {
    assertBroken("codes: [{code: X, finding: nonsense}]", "nonsense");
    assertBroken("codes: [{code: X, finding: heart-rate, site: nose}]", "nose");
    assertBroken("codes: [{code: X, finding: heart-rate, side: left}]", "side");
    assertBroken("codes: [{code: X, finding: consciousness, values: {A: awake}}]", "awake");
    assertBroken("codes: [{code: X, finding: consciousness, unit: '%'}]", "unit");
    assertBroken("codes: [{code: X, finding: heart-rate, unit: bpm}]", "bpm");
    assertBroken("codes: [{code: X, finding: heart-rate, units: {puls: Cel}}]", "Cel");
    assertBroken(
        "answers: [{system: SCT, code: '1', finding: consciousness, option: awake}]", "awake");
    assertBroken(
        "codes: [{code: X, finding: heart-rate}, {code: X, finding: temperature}]", "twice");
    assertBroken("codes: [{code: X, finding: heart-rate, sight: left}]", "sight");
  }

  private void assertBroken(String yaml, String word) {
    assertThatThrownBy(() -> read(yaml))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining(word);
  }

  private CodeTable read(String yaml) throws IOException {
    var file = Files.writeString(directory.resolve("codes.yaml"), yaml);
    return CodeMapFile.read(ShippedCodes.RULES, file);
  }

  private static ForeignCode code(String source, String system, String code) {
    return new ForeignCode(source, system, code);
  }
}
