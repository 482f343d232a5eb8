package org.driftward.scoring.definition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.StringReader;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A definition that cannot be trusted is refused at start, at the line that is wrong. */
class BrokenDefinitionTest {

  /** A sound definition of no published score. */
  private static final String SOUND =
      """
      id: sample
      title: Sample
      version: "1"
      rank: 500
      source: "no source"
      applies-to:
        age: {from: 16}
        required: [tall]
      shown: always
      aggregate: sum
      serves: PT6H
      inputs:
        - {code: heart-rate, unit: /min}
        - {code: consciousness}
        - code: mean-pressure
          unit: "mm[Hg]"
          digits: 1
          combined:
            formula: sum over three
            divisor: 3
            terms:
              - {finding: systolic-pressure, unit: "mm[Hg]"}
              - {finding: diastolic-pressure, unit: "mm[Hg]", weight: 2}
        - code: gas
          ask: inspired-oxygen
          words: [air, oxygen]
          newest-of:
            - {finding: inspired-oxygen}
            - {finding: oxygen-flow, unit: L/min, above: 0, gives: oxygen}
            - {sum: [gcs-eye, gcs-motor], below: 3, ask: true}
        - code: urine
          unit: mL/kg/h
          output: {finding: urine-output, unit: mL, over: PT6H,
                   period: {finding: urine-output-period, unit: h},
                   per: {finding: body-weight, unit: kg}}
        - {code: capillary-refill, unit: s, pick: highest}
      rows:
        - input: heart-rate
          row: Pulse
          bands:
            - {upto: 40, points: 2}
            - {from: 41, upto: 90, points: 0}
            - {from: 91, points: 1}
        - input: consciousness
          row: Words
          bands:
            - {is: [alert], points: 0}
            - {is: [confused, voice, pain, unresponsive], points: 3}
        - input: mean-pressure
          row: Mean
          bands:
            - {below: 55, points: 2, given: {gas: [air]}}
            - {from: 55, points: 0, given: {gas: [air]}}
            - {points: 1, given: {gas: [oxygen]}}
        - input: urine
          row: Urine
          for: {age: {upto: 59}}
          bands: [{points: 0}]
        - input: urine
          row: Urine of the old
          for: {age: {from: 60}}
          bands: [{points: 1}]
        - input: capillary-refill
          row: Refill
          bands: [{upto: 2, points: 0}, {above: 2, points: 1}]
      risks:
        - {id: high, from: 3, response: hurry}
        - {id: low, response: wait}
      """;

  private static BrokenDefinitionException refusal(String yaml) {
    return catchThrowableOfType(
        BrokenDefinitionException.class,
        () ->
            new DefinitionReader(Catalogue.shipped()).read("sample.yaml", new StringReader(yaml)));
  }

  @Test
  void shouldTakeTheSoundOne() {
    assertThat(refusal(SOUND)).isNull();
  }

  /** What is replaced, by what; the line marked with {@code #!} is at fault; what is said of it. */
  static Stream<Arguments> faults() {
    return Stream.of(
        fault("{from: 41, upto: 90, points: 0}", "{from: 42, upto: 90, points: 0} #!", "gap"),
        fault("{from: 91, points: 1}", "{from: 92, points: 1} #!", "gap after 41 to 90"),
        fault("{from: 91, points: 1}", "{from: 90, points: 1} #!", "overlaps 41 to 90"),
        fault("{upto: 40, points: 2}", "{points: 2}", "{from: 41,", "{from: 41, #!\n", "overlaps"),
        fault("{upto: 40, points: 2}", "{from: 20, upto: 40, points: 2} #!", "gap below it"),
        fault("{from: 91, points: 1}", "{from: 91, upto: 200, points: 1} #!", "nothing is above"),
        fault("{from: 91, points: 1}", "{from: 90.5, points: 1} #!", "finer than 0 digits"),
        fault("{from: 91, points: 1}", "{from: 91, points: -1} #!", "-1 points"),
        fault("{from: 91, points: 1}", "{from: 91} #!", "points is missing"),
        fault("{from: 91, points: 1}", "{from: 91, above: 90, points: 1} #!", "either from or"),
        fault("{from: 91, points: 1}", "{from: 91, upto: 90, points: 1} #!", "nothing lies"),
        fault(
            "[alert], points",
            "[alert, voice], points",
            "[confused,",
            "[confused, #!\n",
            "two bands"),
        fault("[confused, voice, pain", "[confused, #!\n pain", "voice is in no band"),
        fault("[confused, voice", "[drowsy, voice #!\n", "never \"drowsy\""),
        fault("{from: 55, points: 0, g", "{from: 56, points: 0, #!\n g", "gap"),
        fault("given: {gas: [oxygen]}", "given: {gas: [helium]} #!\n", "never \"helium\""),
        fault("given: {gas: [oxygen]}", "given: {flow: [oxygen]} #!\n", "none of the inputs"),
        fault("given: {gas: [oxygen]}", "given: {heart-rate: [fast]} #!\n", "words only"),
        fault("{code: heart-rate", "{code: hart-rate #!\n", "no finding hart-rate"),
        fault("{finding: oxygen-flow", "{finding: oxygen-flo #!\n", "no finding oxygen-flo"),
        fault("finding: systolic-pressure", "finding: sistolic #!\n", "no finding sistolic"),
        fault("ask: inspired-oxygen", "ask: gas #!", "no finding gas"),
        fault("unit: /min}", "unit: Hz} #!", "recorded in /min, not in Hz"),
        fault(", unit: /min}", "} #!", "recorded in /min, not in no unit"),
        fault("unit: L/min", "unit: mL/min #!\n", "recorded in L/min"),
        fault("unit: mL, o", "unit: L, #!\n o", "recorded in mL"),
        fault("unit: kg", "unit: g #!\n", "recorded in kg"),
        fault(", pick: highest", " #!\n", "several sites"),
        fault("{code: consciousness}", "{code: consciousness, pick: lowest} #!", "one site"),
        fault("pick: highest", "pick: newest #!\n", "none of"),
        fault("gives: oxygen}", "gives: helium} #!", "none of [air, oxygen]"),
        fault(", gives: oxygen}", "} #!", "neither what it gives nor to ask"),
        fault("finding: inspired-oxygen}", "finding: inspired-oxygen, is: [gas]} #!", "never"),
        fault("sum: [gcs-eye", "sum: [consciousness #!\n", "not a number"),
        fault("digits: 1", "digits: 9 #!", "rounding to 9 digits"),
        fault("digits: 1", "digits: one #!", "a whole number"),
        fault("divisor: 3", "divisor: three #!", "a number"),
        fault("serves: PT6H", "serves: 6 hours #!", "a duration"),
        fault("unit: h}", "unit: min} #!\n", "recorded in h"),
        fault("over: PT6H", "over: PT0S #!\n", "output over"),
        fault("shown: always", "shown: often #!", "none of"),
        fault("shown: always", "show: always #!", "unknown field show"),
        fault("unit: /min}", "unit: /min, colour: red} #!", "unknown field colour"),
        fault("{id: high, from: 3", "{id: high, form: 3 #!\n", "unknown field form"),
        fault("aggregate: sum", "aggregate: sum\nid: other #!", "id is given twice"),
        fault("input: heart-rate", "input: pulse #!", "none of the inputs"),
        fault("{code: consciousness}", "{code: heart-rate, unit: /min} #!", "listed twice"),
        fault("{age: {from: 60}}", "{age: {from: 60, upto: 50}} #!", "ages from 60 to 50"),
        fault("{age: {from: 16}", "{age: {from: 16}", "inputs:", "inputs: 5 #!\nx:", "a list"),
        fault("title: Sample", "title: [Sample] #!", "one value"),
        fault("title: Sample", "title: }Sample #!", ""));
  }

  private static Arguments fault(String what, String by, String said) {
    return Arguments.of(SOUND.replace(what, by), said);
  }

  private static Arguments fault(String what, String by, String also, String byToo, String said) {
    return Arguments.of(SOUND.replace(what, by).replace(also, byToo), said);
  }

  @ParameterizedTest
  @MethodSource("faults")
  void shouldRefuseAtTheLineAtFault(String yaml, String said) {
    int line = (int) yaml.substring(0, yaml.indexOf("#!")).lines().count();
    var refusal = refusal(yaml);
    assertThat(refusal).isNotNull();
    assertThat(refusal).hasMessageStartingWith("sample.yaml:" + line + ": ");
    assertThat(refusal).hasMessageContaining(said);
    assertThat(refusal.line()).isEqualTo(line);
  }

  /** Faults of the whole are named at the first line. */
  static Stream<Arguments> wholes() {
    return Stream.of(
        Arguments.of("  - {id: low, response: wait}\n", "", "last risk class must hold always"),
        Arguments.of("title: Sample\n", "", "title is missing"),
        Arguments.of("for: {age: {from: 60}}", "for: {age: {from: 61}}", "no row reads urine"),
        Arguments.of("for: {age: {upto: 59}}", "for: {oxygen-scale: 2}", "oxygen scale 1"));
  }

  @ParameterizedTest
  @MethodSource("wholes")
  void shouldRefuseWhatDoesNotHoldTogether(String what, String by, String said) {
    var refusal = refusal(SOUND.replace(what, by));
    assertThat(refusal).isNotNull();
    assertThat(refusal).hasMessageStartingWith("sample.yaml:1: ").hasMessageContaining(said);
  }

  @Test
  void shouldRefuseAnEmptyFile() {
    assertThat(refusal("")).hasMessageContaining("fields are expected");
  }
}
