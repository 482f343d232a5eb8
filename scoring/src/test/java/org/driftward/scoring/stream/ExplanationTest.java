package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.stream.Given.adult;
import static org.driftward.scoring.stream.Given.after;
import static org.driftward.scoring.stream.Given.set;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.StreamSupport;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Promise 3: every number explains itself, in the JSON that topic and HTTP share. Points and bands:
 * Royal College of Physicians, NEWS2, 2017, chart 1; median and slope are computed by hand.
 */
class ExplanationTest {

  @TempDir Path state;

  /** Saturations of a long night, an hour apart: five usual ones, then a fall of one an hour. */
  private JsonNode night() throws IOException {
    int[] saturations = {97, 97, 98, 96, 97, 97, 96, 95, 94, 93, 92};
    try (var topo = new Topo(state)) {
      topo.send(adult("V-1", 1));
      for (int hour = 0; hour < saturations.length; hour++) {
        var set = set("A-" + hour).at(hour).with("oxygen-saturation", saturations[hour], "%");
        topo.send((hour == 10 ? set.without("temperature") : set).made());
      }
      var sent = topo.snapshots();
      var newest = JsonFormat.of(Snapshot.class).write(sent.get(sent.size() - 1));
      return new ObjectMapper().readTree(newest);
    }
  }

  private static JsonNode of(JsonNode list, String code) {
    return StreamSupport.stream(list.spliterator(), false)
        .filter(one -> one.at("/code").asText().equals(code))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void shouldGiveValueAgeBandPointsRowAndSourceOfEveryInput() throws IOException {
    var night = night();
    var inputs = night.at("/scores/0/inputs");

    assertThat(inputs).hasSize(7);
    for (var input : inputs) {
      assertThat(input.at("/value").asText()).isNotEmpty();
      assertThat(input.at("/band").asText()).isNotEmpty();
      assertThat(input.at("/points").isInt()).isTrue();
      assertThat(input.at("/row").asText()).isNotEmpty();
      assertThat(input.at("/source").asText()).contains("Royal College of Physicians");
    }
    var saturation = of(inputs, "oxygen-saturation");
    assertThat(saturation.at("/value").asInt()).isEqualTo(92);
    assertThat(saturation.at("/unit").asText()).isEqualTo("%");
    assertThat(saturation.at("/band").asText()).isEqualTo("92 to 93");
    assertThat(saturation.at("/points").asInt()).isEqualTo(2);
    assertThat(saturation.at("/row").asText()).isEqualTo("SpO2 scale 1");
    // Its age is the difference to the picture's own time: one hour, for the one that was left out.
    assertThat(night.at("/asOf").asText()).isEqualTo(after(10).toString());
    assertThat(of(inputs, "temperature").at("/takenAt").asText()).isEqualTo(after(9).toString());
  }

  @Test
  void shouldNameThePolicyAndTheDefinitionThatMadeIt() throws IOException {
    var night = night();

    assertThat(night.at("/policy").asText()).isEqualTo("shipped-1");
    assertThat(night.at("/scores/0/id").asText()).isEqualTo("news2");
    assertThat(night.at("/scores/0/version").asText()).isEqualTo("2017.1");
  }

  /** The median of hours 0 to 9 is 96.5; half of them lie within 0.5 of it, less than the noise. */
  @Test
  void shouldGiveTheNumbersThatADriftWasComputedFrom() throws IOException {
    var drift = of(night().at("/drift"), "oxygen-saturation");

    assertThat(drift.at("/value").asDouble()).isEqualTo(92);
    assertThat(drift.at("/unit").asText()).isEqualTo("%");
    assertThat(drift.at("/baseline").asDouble()).isEqualTo(96.5);
    assertThat(drift.at("/spread").asDouble()).isEqualTo(1);
    assertThat(drift.at("/drift").asDouble()).isEqualTo(-4.5);
    assertThat(drift.at("/worse").asBoolean()).isTrue();
    assertThat(drift.at("/accumulated").asDouble()).isNegative();
    assertThat(drift.at("/sets").asInt()).isEqualTo(10);
    assertThat(drift.at("/from").asText()).isEqualTo(after(0).toString());
    assertThat(drift.at("/until").asText()).isEqualTo(after(9).toString());
  }

  /** Of 55 pairs 4 rise and 44 fall; the median of their slopes is -0.5. */
  @Test
  void shouldGiveTheNumbersThatATrendWasComputedFrom() throws IOException {
    var trend = of(night().at("/trend"), "oxygen-saturation");

    assertThat(trend.at("/perHour").asDouble()).isEqualTo(-0.5);
    assertThat(trend.at("/s").asInt()).isEqualTo(-40);
    assertThat(trend.at("/pValue").asDouble()).isCloseTo(0.00175287, within(1e-8));
    assertThat(trend.at("/significant").asBoolean()).isTrue();
    assertThat(trend.at("/sets").asInt()).isEqualTo(11);
    assertThat(trend.at("/from").asText()).isEqualTo(after(0).toString());
    assertThat(trend.at("/threshold").asDouble()).isEqualTo(91);
    assertThat(trend.at("/projectedCrossing").asText()).isNotEmpty();
    assertThat(trend.at("/earliest").asText()).isNotEmpty();
  }
}
