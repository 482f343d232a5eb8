package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.child;

import java.util.Set;
import org.driftward.ingest.contract.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Brighton PEWS against Monaghan 2005. Normal ranges by age: NHS Dumfries and Galloway; slow
 * pulses: Parshuram et al. 2009; that these two are used is an engineering choice.
 */
class BrightonPewsTest {

  private static final String PEWS = "pews-brighton";

  private static Bedside eight() {
    return child(8, 100, 24);
  }

  @ParameterizedTest
  @CsvSource({
    "child-behaviour,appropriate,0",
    "child-behaviour,sleeping,1",
    "child-behaviour,irritable,2",
    "child-behaviour,lethargic,3",
    "child-colour,pink,0",
    "child-colour,pale,1",
    "child-colour,grey,2",
    "child-colour,mottled,3",
    "child-breathing-effort,normal,0",
    "child-breathing-effort,accessory-muscles,1",
    "child-breathing-effort,recession,2",
    "child-breathing-effort,grunting,3",
    "nebulisers,given,0",
    "nebulisers,quarter-hourly,2",
    "vomiting,present,0",
    "vomiting,persistent-after-surgery,2"
  })
  void shouldScoreWhatIsSeen(String code, String word, int points) {
    assertThat(eight().with(code, word).total(PEWS)).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({"1,0", "2,0", "2.4,0", "2.5,1", "3,1", "4,2", "5,3", "8,3"})
  void shouldScoreTheSlowestCapillaryRefill(String seconds, int points) {
    var patient = eight().at("capillary-refill", "foot", Side.LEFT, seconds);
    assertThat(patient.total(PEWS)).isEqualTo(points);
  }

  /** 4 L/min for level 1 is the author's slides' reading; one copy prints 6. */
  @ParameterizedTest
  @CsvSource({
    "inspired-oxygen-fraction,29,0",
    "inspired-oxygen-fraction,30,1",
    "inspired-oxygen-fraction,39,1",
    "inspired-oxygen-fraction,40,2",
    "inspired-oxygen-fraction,49,2",
    "inspired-oxygen-fraction,50,3",
    "oxygen-flow,3.9,0",
    "oxygen-flow,4,1",
    "oxygen-flow,5.9,1",
    "oxygen-flow,6,2",
    "oxygen-flow,7.9,2",
    "oxygen-flow,8,3"
  })
  void shouldScoreOxygenByConcentrationOrFlow(String code, String value, int points) {
    assertThat(eight().without("inspired-oxygen").with(code, value).total(PEWS)).isEqualTo(points);
  }

  @Test
  void shouldAskHowMuchOxygenIsGiven() {
    var older = eight().without("inspired-oxygen").ago("PT2H").with("inspired-oxygen", "air");
    assertThat(older.total(PEWS)).isZero();
    var score = older.with("inspired-oxygen", "oxygen").score(PEWS);
    assertThat(score.missing()).containsExactly("inspired-oxygen-fraction");
    assertThat(score.high()).isEqualByComparingTo("3");
  }

  /** Age; upper end of normal; slowest that is not bradycardia. */
  @ParameterizedTest
  @CsvSource({
    "0,159,91",
    "1,149,71",
    "2,139,71",
    "4,139,71",
    "5,129,61",
    "11,129,61",
    "12,109,50",
    "15,109,50"
  })
  void shouldScoreThePulseByAge(int years, int normal, int slow) {
    var patient = child(years, normal, breathing(years));
    assertThat(patient.total(PEWS)).isZero();
    assertThat(patient.with("heart-rate", normal + 19).total(PEWS)).isZero();
    assertThat(patient.with("heart-rate", normal + 20).total(PEWS)).isEqualTo(2);
    assertThat(patient.with("heart-rate", normal + 29).total(PEWS)).isEqualTo(2);
    assertThat(patient.with("heart-rate", normal + 30).total(PEWS)).isEqualTo(3);
    assertThat(patient.with("heart-rate", slow).total(PEWS)).isZero();
    assertThat(patient.with("heart-rate", slow - 1).total(PEWS)).isEqualTo(3);
  }

  private static int breathing(int years) {
    return years == 0 ? 40 : years == 1 ? 30 : years < 12 ? 22 : 20;
  }

  @ParameterizedTest
  @CsvSource({
    "0,30,49",
    "1,25,39",
    "2,20,34",
    "4,20,34",
    "5,20,29",
    "11,20,29",
    "12,15,24",
    "15,15,24"
  })
  void shouldScoreBreathingByAge(int years, int low, int high) {
    var patient = child(years, years < 2 ? 130 : years < 12 ? 100 : 80, low);
    assertThat(patient.total(PEWS)).isZero();
    assertThat(patient.with("respiratory-rate", high + 10).total(PEWS)).isZero();
    assertThat(patient.with("respiratory-rate", high + 11).total(PEWS)).isEqualTo(1);
    assertThat(patient.with("respiratory-rate", high + 20).total(PEWS)).isEqualTo(1);
    assertThat(patient.with("respiratory-rate", high + 21).total(PEWS)).isEqualTo(2);
    assertThat(patient.with("respiratory-rate", low - 4).total(PEWS)).isZero();
    assertThat(patient.with("respiratory-rate", low - 5).total(PEWS)).isEqualTo(3);
  }

  /** Three groups of at most 3 and the extra 2: 11, as computed from the table. */
  @Test
  void shouldCountEachGroupOnceAndTheExtraOnce() {
    var worst =
        eight()
            .with("child-behaviour", "lethargic")
            .with("child-colour", "mottled")
            .at("capillary-refill", "foot", Side.LEFT, 6)
            .with("heart-rate", 180)
            .with("respiratory-rate", 60)
            .with("child-breathing-effort", "grunting")
            .with("inspired-oxygen-fraction", 60)
            .with("nebulisers", "quarter-hourly")
            .with("vomiting", "persistent-after-surgery");
    assertThat(worst.total(PEWS)).isEqualTo(11);
  }

  @Test
  void shouldSpanTheWholeScoreWhenNothingIsKnown() {
    var score = Bedside.adult().as(Subject.ofAge(8)).score(PEWS);
    assertThat(score.low()).isEqualByComparingTo("0");
    assertThat(score.high()).isEqualByComparingTo("11");
    assertThat(score.missing())
        .containsExactly(
            "child-behaviour",
            "child-colour",
            "capillary-refill",
            "heart-rate",
            "respiratory-rate",
            "child-breathing-effort",
            "inspired-oxygen-fraction",
            "nebulisers",
            "vomiting");
  }

  @ParameterizedTest
  @CsvSource({"0,true", "15,true", "16,false"})
  void shouldServeChildrenOnly(int years, boolean serves) {
    assertThat(eight().as(Subject.ofAge(years)).gives(PEWS)).isEqualTo(serves);
  }

  @Test
  void shouldLeadForChildren() {
    assertThat(eight().scores().get(0).id()).isEqualTo(PEWS);
  }

  /** That a care plan may keep a patient of 16 or more among the children: engineering choice. */
  @ParameterizedTest
  @CsvSource({"15,false,true", "15,true,true", "16,false,false", "16,true,true"})
  void shouldServeByAgeAndByCarePlan(int years, boolean keptAmongChildren, boolean served) {
    var populations = keptAmongChildren ? Set.of("child") : Set.<String>of();
    var patient = child(15, 80, 16).as(new Subject(years, 1, populations));
    assertThat(patient.gives(PEWS)).isEqualTo(served);
    assertThat(patient.gives("news2")).isNotEqualTo(served);
  }

  /** Normal pulse and breathing go by age, so without one there is nothing to score by. */
  @Test
  void shouldNotServeAChildOfUnknownAge() {
    var patient = child(15, 80, 16).as(new Subject(null, 1, Set.of("child")));
    assertThat(patient.gives(PEWS)).isFalse();
    assertThat(patient.gives("news2")).isFalse();
  }
}
