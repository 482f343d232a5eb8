package org.driftward.scoring.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;

/** What is written out of pieces says what Jackson says without them. */
class PiecesTest {

  private static final JsonFormat<Snapshot> FORMAT = JsonFormat.of(Snapshot.class);

  /** As the house writes, but each record field by field. */
  private static final ObjectMapper FIELD_BY_FIELD =
      new ObjectMapper()
          .findAndRegisterModules()
          .addMixIn(Snapshot.class, Object.class)
          .setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL)
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
          .configure(StreamWriteFeature.USE_FAST_DOUBLE_WRITER.mappedFeature(), true);

  @Property
  void saysWhatJacksonSays(@ForAll("snapshots") Snapshot snapshot) throws Exception {
    assertThat(written(snapshot)).isEqualTo(FIELD_BY_FIELD.writeValueAsString(snapshot));
  }

  @Property
  void isReadAsWhatItWas(@ForAll("snapshots") Snapshot snapshot) {
    assertThat(FORMAT.read(FORMAT.write(snapshot))).isEqualTo(snapshot);
  }

  @Example
  void whatIsNoNumberIsWrittenAsJacksonDoes() throws Exception {
    var drift = drift("heart-rate", null, null, "/min", Double.NaN, Double.POSITIVE_INFINITY);
    var snapshot = snapshot(List.of(), List.of(drift));
    assertThat(written(snapshot)).isEqualTo(FIELD_BY_FIELD.writeValueAsString(snapshot));
  }

  private static String written(Snapshot snapshot) {
    return new String(FORMAT.write(snapshot), UTF_8);
  }

  @Provide
  Arbitrary<Snapshot> snapshots() {
    return Combinators.combine(scores().list().ofMaxSize(4), drifts().list().ofMaxSize(4))
        .as(PiecesTest::snapshot);
  }

  private static Snapshot snapshot(List<Score> scores, List<Drift> drifts) {
    return new Snapshot(
        "V-1",
        Instant.EPOCH,
        "A-1",
        1,
        true,
        false,
        "test-1",
        0,
        scores,
        drifts,
        List.of(),
        List.of(),
        null,
        List.of(),
        null,
        Duration.ofHours(4),
        null,
        null);
  }

  private static Arbitrary<Score> scores() {
    var totals = numbers().tuple2();
    return Combinators.combine(
            texts().tuple5(),
            totals,
            Arbitraries.integers(),
            numbers().injectNull(0.3),
            texts().list().ofMaxSize(3),
            inputs().list().ofMaxSize(4))
        .as(
            (text, total, single, usual, missing, inputs) ->
                new Score(
                    text.get1(),
                    text.get2(),
                    text.get3(),
                    total.get1().min(total.get2()),
                    total.get1().max(total.get2()),
                    missing.isEmpty(),
                    text.get4(),
                    text.get5(),
                    single,
                    usual,
                    missing,
                    inputs));
  }

  private static Arbitrary<ScoredInput> inputs() {
    return Combinators.combine(
            texts().tuple4(),
            scalars(),
            texts().injectNull(0.3),
            moments(),
            Arbitraries.integers(),
            texts().injectNull(0.5))
        .as(
            (text, value, unit, takenAt, points, derivedFrom) ->
                new ScoredInput(
                    text.get1(),
                    value,
                    unit,
                    takenAt,
                    points,
                    text.get2(),
                    text.get3(),
                    text.get4(),
                    derivedFrom));
  }

  private static Arbitrary<Drift> drifts() {
    var doubles = Arbitraries.doubles().tuple2();
    return Combinators.combine(
            texts(),
            texts().injectNull(0.5),
            Arbitraries.of(Side.class).injectNull(0.5),
            texts().injectNull(0.3),
            doubles)
        .as(
            (code, site, side, unit, number) ->
                drift(code, site, side, unit, number.get1(), number.get2()));
  }

  private static Drift drift(
      String code, String site, Side side, String unit, double value, double spread) {
    var from = Instant.parse("2026-01-05T06:00:00.123Z");
    return new Drift(
        code,
        site,
        side,
        value,
        unit,
        value / 3,
        spread,
        spread / 7,
        value > spread,
        value,
        12,
        from,
        from.plusSeconds(value > 0 ? 60 : 0));
  }

  /** With quotation marks, controls, and what lies beyond the first plane. */
  private static Arbitrary<String> texts() {
    return Arbitraries.oneOf(
        Arbitraries.of("news2", "94 to 95", "mm[Hg]", "", "\"\\\u0000\n", "µ £ 😀"),
        Arbitraries.strings().ascii().ofMaxLength(12));
  }

  private static Arbitrary<Scalar> scalars() {
    return Arbitraries.oneOf(numbers().map(Scalar::of), texts().map(Scalar::of));
  }

  private static Arbitrary<BigDecimal> numbers() {
    return Arbitraries.oneOf(
        Arbitraries.bigDecimals().ofScale(2), Arbitraries.of(BigDecimal.TEN.setScale(-1)));
  }

  private static Arbitrary<Instant> moments() {
    return Arbitraries.longs().between(0, 4_102_444_800_000L).map(Instant::ofEpochMilli);
  }
}
