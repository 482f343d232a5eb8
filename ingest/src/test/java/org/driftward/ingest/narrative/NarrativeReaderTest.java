package org.driftward.ingest.narrative;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.Narrative.Why;
import org.driftward.ingest.contract.NarrativeReader;
import org.driftward.ingest.core.narrative.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is asked instead of recorded, and how a finding gets its words. */
class NarrativeReaderTest {

  private static final CatalogueEntry FEATHERS =
      new CatalogueEntry(
          "feathers",
          "State of the feathers",
          "skin",
          Kind.CODED,
          null,
          List.of(),
          false,
          null,
          null,
          null,
          List.of("smooth", "ruffled"),
          List.of("smooth"),
          Worse.HIGHER,
          null,
          null,
          null,
          "invented for this test");

  /** The shipped catalogue with one more entry. */
  private record Larger(CatalogueEntry more) implements Catalogue {
    @Override
    public List<CatalogueEntry> entries() {
      return Stream.concat(Catalogue.shipped().entries().stream(), Stream.of(more)).toList();
    }

    @Override
    public Optional<CatalogueEntry> find(String code) {
      return entries().stream().filter(entry -> entry.code().equals(code)).findFirst();
    }
  }

  private static Wording plumage() {
    return new Wording(
        "feathers",
        List.of("plumage"),
        null,
        null,
        Map.of("ruffled", List.of("on end")),
        null,
        null,
        null,
        null,
        false,
        false,
        null,
        false);
  }

  @Test
  void shouldUnderstandANewFindingByItsOwnNameAndOptions() {
    var reader = NarrativeFiles.with(new Larger(FEATHERS), List.of());

    assertThat(reader.read("State of the feathers ruffled.").findings())
        .extracting(Narrative.Heard::finding)
        .containsExactly(Finding.coded("feathers", "ruffled"));
  }

  @Test
  void shouldUnderstandANewFindingByTheWordsThatItBrings() {
    var reader = NarrativeFiles.with(new Larger(FEATHERS), List.of(plumage()));

    assertThat(reader.read("Pulse 84, plumage on end.").findings())
        .extracting(Narrative.Heard::finding)
        .contains(Finding.coded("feathers", "ruffled"));
  }

  @Test
  void shouldRefuseWordsForAFindingThatTheCatalogueDoesNotKnow() {
    var words = new ArrayList<>(List.of(plumage()));

    assertThatThrownBy(() -> NarrativeFiles.with(Catalogue.shipped(), words))
        .hasMessageContaining("feathers");
  }

  @ParameterizedTest
  @CsvSource({
    "temp 101.3, OUT_OF_RANGE",
    "heart rate eight hundred and forty, OUT_OF_RANGE",
    "bp 80/120, IMPOSSIBLE_PAIR",
    "resps 20 to 22, NO_EXACT_VALUE",
    "sats around 93, NO_EXACT_VALUE",
    "cap refill under two seconds in both hands, NO_EXACT_VALUE",
  })
  void shouldAskWhereAValueIsNotExactOrCannotBe(String text, Why why) {
    var narrative = NarrativeReader.shipped().read(text);

    assertThat(narrative.findings()).isEmpty();
    assertThat(narrative.questions()).extracting(Narrative.Question::why).containsExactly(why);
  }

  /** 101.3 degrees Fahrenheit are 38.5 degrees Celsius by the definition of the scale. */
  @Test
  void shouldOfferTheOtherUnit() {
    var question = NarrativeReader.shipped().read("temp 101.3").questions().get(0);

    assertThat(question.offers()).containsExactly(Finding.quantity("temperature", "38.5", "Cel"));
  }

  @Test
  void shouldShowClinicalWordsFromWhichNothingWasMade() {
    var text = "Left leg is swollen. Pulse 84.";

    assertThat(NarrativeReader.shipped().read(text).unread())
        .extracting(span -> text.substring(span.from(), span.to()))
        .containsExactly("swollen");
  }

  @Test
  void shouldRefuseATextThatIsTooLong() {
    var text = "a".repeat(Narrative.LONGEST + 1);

    assertThatThrownBy(() -> NarrativeReader.shipped().read(text))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
