package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.score.Applicability.Ages;
import org.driftward.scoring.core.score.ScoreDefinition.Shown;
import org.driftward.scoring.core.score.Source.Pick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A record that makes no sense cannot be made, and says why. Ours, no source. */
class GuardsTest {

  private static final Source PULSE = source("heart-rate");
  private static final Input INPUT = input(0);
  private static final Aggregate.Ratio RATIO = ratio(4);
  private static final RiskClass ANY = new RiskClass("any", Span.ALL, 0, "local policy");

  private static Source source(String code) {
    return new Source(FindingKey.of(code), "/min", Pick.UNSITED, Duration.ofHours(6));
  }

  private static Input input(int place) {
    return new Input(
        place, "heart-rate", "/min", Resolution.digits(0), List.of(), new Recorded(PULSE));
  }

  private static Aggregate.Ratio ratio(int digits) {
    var pulse = List.of(Map.of(0, BigDecimal.ONE));
    return new Aggregate.Ratio(pulse, pulse, digits);
  }

  private static Row row(Ages ages) {
    var all = Band.number(Long.MIN_VALUE, Long.MAX_VALUE, List.of(), 0, "any");
    return new Row(INPUT, "Pulse", "pulse", 0, ages, "no source", List.of(all));
  }

  private static ScoreDefinition definition(
      Shown shown, List<Input> inputs, List<Row> rows, Aggregate how, List<RiskClass> risks) {
    var everybody =
        new Applicability(Ages.ALL, false, Set.of(), Set.of(), Set.of(), List.of("nobody"));
    return new ScoreDefinition(
        "s", "S", "1", 1, "none", List.of(), everybody, shown, false, inputs, rows, how, risks);
  }

  private static void refused(Runnable making, String why) {
    assertThatThrownBy(making::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(why);
  }

  @Test
  void shouldRefuseARatioOfNothingOrOfTooManyDigits() {
    var pulse = List.of(Map.of(0, BigDecimal.ONE));
    refused(() -> new Aggregate.Ratio(List.of(), pulse, 2), "something over and something under");
    refused(() -> new Aggregate.Ratio(pulse, List.of(), 2), "something over and something under");
    refused(() -> ratio(-1), "-1 digits");
    refused(() -> ratio(13), "13 digits");
    assertThat(ratio(0).digits()).isZero();
    assertThat(ratio(12).digits()).isEqualTo(12);
  }

  @Test
  void shouldRefuseAgesThatNobodyHas() {
    refused(() -> new Ages(-1, 5), "ages from -1");
    refused(() -> new Ages(6, 5), "ages from 6 to 5");
    assertThat(new Ages(0, 0).holds(0)).isTrue();
    assertThat(new Ages(5, 7).holds(4)).isFalse();
    assertThat(new Ages(5, 7).holds(5)).isTrue();
    assertThat(new Ages(5, 7).holds(7)).isTrue();
    assertThat(new Ages(5, 7).holds(8)).isFalse();
  }

  @Test
  void shouldRefuseAPopulationBothAskedForAndExcluded() {
    var tall = Set.of("tall");
    var nobody = Set.<String>of();
    refused(() -> new Applicability(Ages.ALL, true, nobody, tall, tall, List.of()), "and excluded");
    refused(() -> new Applicability(Ages.ALL, true, tall, nobody, tall, List.of()), "and excluded");
    assertThat(new Applicability(Ages.ALL, true, tall, tall, nobody, List.of()).populations())
        .containsExactly("tall");
  }

  @Test
  void shouldRefuseABandThatHoldsNothingOrTakesPointsAway() {
    refused(() -> Band.number(2, 1, List.of(), 0, "2 to 1"), "band 2 to 1 holds nothing");
    refused(() -> Band.number(1, 1, List.of(), -1, "1"), "-1 points");
    assertThat(Band.number(1, 1, List.of(), 0, "1").holds(1)).isTrue();
  }

  @Test
  void shouldRefuseMoreInputsOrWordsThanSixtyFour() {
    refused(() -> input(64), "input number 64 of at most 64");
    refused(() -> input(-1), "input number -1");
    assertThat(input(63).bit()).isEqualTo(Long.MIN_VALUE);
    assertThat(words(64).words()).hasSize(64);
    refused(() -> words(65), "65 words");
    refused(() -> words(2).bits(List.of("w-0", "w-2")), "never \"w-2\"");
    assertThat(words(64).bits(List.of("w-0", "w-63"))).isEqualTo(Long.MIN_VALUE + 1);
  }

  private static Input words(int count) {
    var words = IntStream.range(0, count).mapToObj(i -> "w-" + i).toList();
    return new Input(0, "word", null, Resolution.digits(0), words, new Recorded(PULSE));
  }

  @Test
  void shouldRefuseToRoundToDigitsThatNobodyMeasures() {
    refused(() -> Resolution.digits(-1), "-1 digits");
    refused(() -> Resolution.digits(7), "7 digits");
    assertThat(Resolution.digits(0).steps(new BigDecimal("7.5"))).isEqualTo(8);
    assertThat(Resolution.digits(6).steps(new BigDecimal("0.0000005"))).isEqualTo(1);
  }

  /** Eleven digits before the point are counted; beyond, only the sign is. */
  @ParameterizedTest
  @CsvSource({
    "99999999999, 99999999999",
    "100000000000, 1000000000000000000",
    "-100000000000, -1000000000000000000"
  })
  void shouldNotOverflowOnNumbersBeyondMeasurement(BigDecimal value, long steps) {
    assertThat(Resolution.digits(0).steps(value)).isEqualTo(steps);
  }

  @Test
  void shouldRefuseASpanWithoutAnythingInIt() {
    var one = BigDecimal.ONE;
    refused(() -> new Span(BigDecimal.TEN, true, one, true), "nothing lies between 10 and 1");
    refused(() -> new Span(one, true, one, false), "nothing lies");
    refused(() -> new Span(one, false, one, true), "nothing lies");
    assertThat(new Span(one, true, one, true).holds(one)).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0.9,false", "1,true", "1.1,true", "2,false"})
  void shouldHoldAnEndThatBelongsAndNotOneThatDoesNot(BigDecimal value, boolean holds) {
    var span = new Span(BigDecimal.ONE, true, BigDecimal.valueOf(2), false);
    assertThat(span.holds(value)).isEqualTo(holds);
  }

  @Test
  void shouldRefuseASourceThatNeverServes() {
    refused(
        () -> new Source(FindingKey.of("x"), null, Pick.UNSITED, Duration.ZERO), "serves for PT0S");
    refused(
        () -> new Source(FindingKey.of("x"), null, Pick.UNSITED, Duration.ofHours(-1)),
        "serves for PT-1H");
  }

  @Test
  void shouldRefuseAnOutputOverNoTime() {
    refused(() -> new Output(PULSE, Duration.ZERO, null, null), "output over PT0S");
    refused(() -> new Output(PULSE, Duration.ofHours(-6), null, null), "output over PT-6H");
  }

  @Test
  void shouldRefuseASubjectThatCannotBe() {
    refused(() -> new Subject(-1, 1, Set.of()), "age of -1");
    refused(() -> new Subject(0, 0, Set.of()), "oxygen scale 0");
    refused(() -> new Subject(0, 3, Set.of()), "oxygen scale 3");
    assertThat(Subject.ofAge(0).ageYears()).isZero();
  }

  @Test
  void shouldRefuseASumOfNothingOrOverNothing() {
    var term = List.of(new Combined.Term(PULSE, BigDecimal.ONE));
    refused(() -> new Combined(List.of(), BigDecimal.ONE, "none"), "a sum of nothing");
    refused(() -> new Combined(term, BigDecimal.ZERO, "x"), "divided by 0");
    refused(() -> new Combined(term, BigDecimal.ONE.negate(), "x"), "divided by -1");
  }

  @Test
  void shouldRefuseARuleOnNothingOrOnWordsAddedUp() {
    refused(() -> new Rule(List.of(), Span.ALL, Set.of(), 0), "a rule on no finding");
    refused(
        () -> new Rule(List.of(PULSE, source("x")), Span.ALL, Set.of("alert"), 0),
        "words do not add up");
  }

  @Test
  void shouldRefuseADefinitionThatDoesNotHoldTogether() {
    var rows = List.of(row(Ages.ALL));
    var inputs = List.of(INPUT);
    var sum = new Aggregate.Sum();
    var risks = List.of(ANY);
    assertThatCode(() -> definition(Shown.ALWAYS, inputs, rows, sum, risks))
        .doesNotThrowAnyException();
    assertThatCode(() -> definition(Shown.COMPLETE, inputs, List.of(), RATIO, risks))
        .doesNotThrowAnyException();
    refused(() -> definition(Shown.ALWAYS, List.of(), rows, sum, risks), "s has no inputs");
    refused(() -> definition(Shown.COMPLETE, inputs, rows, RATIO, risks), "only a ratio");
    refused(() -> definition(Shown.ALWAYS, inputs, List.of(), sum, risks), "only a ratio");
    refused(() -> definition(Shown.BEGUN, inputs, List.of(), RATIO, risks), "only when complete");
    refused(() -> definition(Shown.ALWAYS, inputs, rows, sum, List.of()), "must hold always");
    var single = new RiskClass("single", Span.ALL, 3, "look");
    refused(() -> definition(Shown.ALWAYS, inputs, rows, sum, List.of(single)), "hold always");
  }

  @Test
  void shouldTakeADefinitionWhoseRowsServeEveryAge() {
    var rows = List.of(row(new Ages(0, 15)), row(new Ages(16, Integer.MAX_VALUE)));
    assertThatCode(
            () -> definition(Shown.ALWAYS, List.of(INPUT), rows, new Aggregate.Sum(), List.of(ANY)))
        .doesNotThrowAnyException();
  }

  /** One age from every stretch that the rows tell apart is tried. */
  @ParameterizedTest
  @CsvSource({"0,17,18,99", "0,15,17,2147483647", "1,15,16,2147483647"})
  void shouldRefuseADefinitionWhoseRowsLeaveOutAnAge(int from, int upto, int next, int last) {
    var rows = List.of(row(new Ages(from, upto)), row(new Ages(next, last)));
    refused(
        () -> definition(Shown.ALWAYS, List.of(INPUT), rows, new Aggregate.Sum(), List.of(ANY)),
        "no row reads heart-rate");
  }

  @Test
  void shouldRefuseTwoDefinitionsOfOneName() {
    var one =
        definition(
            Shown.ALWAYS,
            List.of(INPUT),
            List.of(row(Ages.ALL)),
            new Aggregate.Sum(),
            List.of(ANY));
    refused(() -> new ScoreBook(Collections.nCopies(2, one)), "s is defined twice");
  }
}
