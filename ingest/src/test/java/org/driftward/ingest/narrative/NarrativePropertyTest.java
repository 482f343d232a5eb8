package org.driftward.ingest.narrative;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.Narrative.Heard;
import org.driftward.ingest.contract.Narrative.Span;
import org.driftward.ingest.contract.NarrativeReader;

/**
 * What holds of every text. 100,000 random texts: {@code mvn -pl ingest test
 * -Dtest=NarrativePropertyTest -Djqwik.tries.default=100000}.
 */
class NarrativePropertyTest {

  private static final NarrativeReader READER = NarrativeReader.shipped();

  private static final List<String> INDEPENDENT =
      List.of(
          "Pulse is 84.",
          "Sats ninety six on air.",
          "Blood pressure one ten over seventy.",
          "No headache.",
          "Abdomen non-tender.",
          "Left leg power 4/5.",
          "Both pupils brisk.",
          "Urine cloudy.",
          "Resps 18.",
          "Her temp was 39 yesterday.");

  @Property
  void shouldReadAnyTextIntoSpansThatNeverOverlap(@ForAll("anything") String text) {
    var narrative = READER.read(text);

    assertApart(narrative, text);
  }

  @Property
  void shouldReadAnyClinicalWordsIntoSpansThatNeverOverlap(@ForAll("clinical") String text) {
    assertApart(READER.read(text), text);
  }

  @Property
  void shouldFindNothingWithoutClinicalWords(@ForAll("idle") String text) {
    assertThat(READER.read(text).findings()).isEmpty();
  }

  @Property(tries = 300)
  void shouldNotMindTheOrderOfIndependentSentences(@ForAll("shuffled") List<String> sentences) {
    var text = String.join(" ", sentences);

    assertThat(READER.read(text).findings())
        .extracting(Heard::finding)
        .containsExactlyInAnyOrderElementsOf(
            READER.read(String.join(" ", INDEPENDENT)).findings().stream()
                .map(Heard::finding)
                .toList());
  }

  @Provide
  Arbitrary<String> anything() {
    return Arbitraries.strings().ofMaxLength(200);
  }

  @Provide
  Arbitrary<String> clinical() {
    var words =
        "left right both no not denies pulse sats bp over 120 / 80 2 + plus out of ten five forty"
            + " two hundred point and or but , . ? : ; oedema ankle shin crackles fine base pain at"
            + " rest wheeze clear sorry if yesterday pupils brisk 3 mm urine ml hour temp F C any"
            + " he says cannula day drain daughter worried there throughout x4 soft tender ...";
    return Arbitraries.of(words.split(" "))
        .list()
        .ofMaxSize(60)
        .map(list -> String.join(" ", list));
  }

  @Provide
  Arbitrary<String> idle() {
    var words =
        "the table stood 7 windows under garden , . bread 12 music while yellowish seven and";
    return Arbitraries.of(words.split(" "))
        .list()
        .ofMaxSize(40)
        .map(list -> String.join(" ", list));
  }

  @Provide
  Arbitrary<List<String>> shuffled() {
    return Arbitraries.shuffle(INDEPENDENT);
  }

  private static void assertApart(Narrative narrative, String text) {
    var spans = new HashSet<Span>();
    narrative.findings().forEach(heard -> spans.add(heard.span()));
    narrative.questions().forEach(question -> spans.add(question.span()));
    spans.addAll(narrative.unread());
    var sorted = new ArrayList<>(spans);
    sorted.sort(Comparator.comparingInt(Span::from));
    for (int i = 0; i < sorted.size(); i++) {
      assertThat(sorted.get(i).to()).isLessThanOrEqualTo(text.length());
      if (i > 0) {
        assertThat(sorted.get(i).from()).isGreaterThanOrEqualTo(sorted.get(i - 1).to());
      }
    }
    var keys = narrative.findings().stream().map(heard -> heard.finding().key()).toList();
    assertThat(keys).doesNotHaveDuplicates();
  }
}
