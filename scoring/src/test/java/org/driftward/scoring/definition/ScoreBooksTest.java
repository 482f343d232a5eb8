package org.driftward.scoring.definition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.score.ScoreDefinition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What ships, and what a hospital may add. */
class ScoreBooksTest {

  private static final String OWN =
      """
      id: %s
      title: Fever
      version: "%s"
      rank: %d
      source: "the ward's own, no source"
      applies-to: {}
      inputs: [{code: temperature, unit: Cel, digits: 1}]
      rows:
        - input: temperature
          row: Fever
          bands: [{below: 38, points: 0}, {from: 38, points: 1}]
      risks: [{id: any, response: local policy}]
      """;

  @TempDir Path directory;

  private Path own(String file, String id, String version, int rank) throws IOException {
    return Files.writeString(directory.resolve(file), OWN.formatted(id, version, rank));
  }

  private static List<String> ids(List<ScoreDefinition> definitions) {
    return definitions.stream().map(ScoreDefinition::id).toList();
  }

  @Test
  void shouldShipElevenScoresLedByNews2() {
    assertThat(ids(ScoreBooks.shipped(Catalogue.shipped()).definitions()))
        .containsExactly(
            "news2",
            "pews-brighton",
            "maternal-trigger",
            "mews",
            "qsofa",
            "sirs",
            "shock-index",
            "modified-shock-index",
            "rox",
            "gcs",
            "kdigo-urine");
  }

  @Test
  void shouldNameSourceVersionLimitsAndResponsesInEveryShippedScore() {
    for (var definition : ScoreBooks.shipped(Catalogue.shipped()).definitions()) {
      assertThat(definition.source()).as(definition.id()).isNotBlank();
      assertThat(definition.version()).as(definition.id()).matches("\\d{4}\\.\\d+");
      assertThat(definition.applicability().notFor()).as(definition.id()).isNotEmpty();
      assertThat(definition.notes()).as(definition.id()).isNotEmpty();
      assertThat(definition.risks())
          .as(definition.id())
          .allSatisfy(risk -> assertThat(risk.response()).isNotBlank());
    }
  }

  /** What the clinical reference marks as not seen in print says so beside its row. */
  @ParameterizedTest
  @CsvSource({
    "mews, systolic-pressure, 200 or more: from memory",
    "mews, systolic-pressure, 70 itself: engineering choice",
    "mews, heart-rate, 130 or more: from memory",
    "mews, heart-rate, 40 itself: engineering choice",
    "mews, respiratory-rate, 30 or more: from memory",
    "mews, temperature, 38.5 or more: from memory",
    "mews, consciousness, engineering choice",
    "qsofa, mentation, from memory",
    "pews-brighton, heart-rate, engineering choice",
    "pews-brighton, respiratory-rate, engineering choice"
  })
  void shouldLabelBesideItsRowWhatWasNotSeenInPrint(String score, String input, String label) {
    var rows =
        ScoreBooks.shipped(Catalogue.shipped()).definitions().stream()
            .filter(definition -> definition.id().equals(score))
            .flatMap(definition -> definition.rows().stream())
            .filter(row -> row.input().code().equals(input))
            .toList();
    assertThat(rows).isNotEmpty().allSatisfy(row -> assertThat(row.source()).contains(label));
  }

  @Test
  void shouldAddAHospitalsOwnByItsRank() throws IOException {
    var book = ScoreBooks.read(List.of(own("fever.yaml", "fever", "1", 5)), Catalogue.shipped());
    assertThat(ids(book.definitions())).startsWith("fever", "news2").hasSize(12);
  }

  @Test
  void shouldReadEveryDefinitionOfADirectory() throws IOException {
    own("a.yaml", "fever-a", "1", 201);
    own("b.yaml", "fever-b", "1", 202);
    Files.writeString(directory.resolve("notes.txt"), "no definition");
    var book = ScoreBooks.read(List.of(directory), Catalogue.shipped());
    assertThat(ids(book.definitions())).endsWith("fever-a", "fever-b");
  }

  @Test
  void shouldLetAHospitalReplaceAShippedScore() throws IOException {
    var book = ScoreBooks.read(List.of(own("own.yaml", "mews", "7", 30)), Catalogue.shipped());
    assertThat(ids(book.definitions())).hasSize(11);
    assertThat(book.definitions())
        .filteredOn(definition -> definition.id().equals("mews"))
        .extracting(ScoreDefinition::version)
        .containsExactly("7");
  }

  @Test
  void shouldRefuseTwoOwnScoresOfOneId() throws IOException {
    var files = List.of(own("a.yaml", "fever", "1", 1), own("b.yaml", "fever", "2", 2));
    assertThatThrownBy(() -> ScoreBooks.read(files, Catalogue.shipped()))
        .isInstanceOf(BrokenDefinitionException.class)
        .hasMessageContaining("b.yaml:1: fever is also defined in");
  }

  @Test
  void shouldNameTheFileOfABrokenOne() throws IOException {
    var broken =
        Files.writeString(
            directory.resolve("broken.yaml"), OWN.formatted("fever", "1", 1).replace("Cel", "K"));
    assertThatThrownBy(() -> ScoreBooks.read(List.of(broken), Catalogue.shipped()))
        .isInstanceOf(BrokenDefinitionException.class)
        .hasMessageContaining("broken.yaml:7: temperature is recorded in Cel");
  }
}
