package org.driftward.ingest.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.core.mapping.ForeignCode;
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
    var shipped = CodeMapFile.read(CATALOGUE, Optional.empty());

    assertThat(shipped.find(code("any", "LN", "67775-7")).flatMap(m -> m.option("ALERT ")))
        .contains("alert");
    assertThat(shipped.unit("bpm")).contains("/min");
    assertThat(shipped.unit("furlong")).isEmpty();
  }

  @Test
  void shouldMeanOnlyUnitsThatUcumKnows() {
    var shipped = CodeMapFile.read(CATALOGUE, Optional.empty());
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
  void shouldRefuseARowThatTheCatalogueContradicts() {
    assertBroken("codes: [{code: X, finding: nonsense}]", "nonsense");
    assertBroken("codes: [{code: X, finding: heart-rate, site: nose}]", "nose");
    assertBroken("codes: [{code: X, finding: heart-rate, side: left}]", "side");
    assertBroken("codes: [{code: X, finding: consciousness, values: {A: awake}}]", "awake");
    assertBroken("codes: [{code: X, finding: consciousness, unit: '%'}]", "unit");
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
    return CodeMapFile.read(CATALOGUE, Optional.of(file));
  }

  private static ForeignCode code(String source, String system, String code) {
    return new ForeignCode(source, system, code);
  }
}
