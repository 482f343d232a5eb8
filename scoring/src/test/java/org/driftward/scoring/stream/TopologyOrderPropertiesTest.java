package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.driftward.scoring.core.timeline.Arrival;
import org.driftward.scoring.core.timeline.Listener;
import org.driftward.scoring.core.timeline.Stories;
import org.driftward.scoring.stream.state.Memory;

/**
 * Promise 1 again, through JSON, store, changelog and restarts; see {@code OrderPropertiesTest}.
 */
class TopologyOrderPropertiesTest {

  private Path state;

  @BeforeTry
  void makeState() throws IOException {
    state = Files.createTempDirectory("driftward-topology");
  }

  @AfterTry
  void removeState() throws IOException {
    try (var files = Files.walk(state)) {
      files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    }
  }

  @Provide
  Arbitrary<List<Arrival>> stories() {
    return Stories.any(12);
  }

  @Property(tries = 25, shrinking = ShrinkingMode.OFF)
  void shouldEndTheSameWhateverTheOrderRepetitionAndRestarts(
      @ForAll("stories") List<Arrival> story, @ForAll long one, @ForAll long other) {
    var first = heard("one", Stories.arriving(story, one), 0, one, new Memory(1, 0));
    var second = heard("other", Stories.arriving(story, other), 5, other, new Memory(1, 2));

    assertThat(Stories.own(second.known(), story)).isEqualTo(Stories.own(first.known(), story));
    assertThat(second.latest()).isEqualTo(first.latest());
  }

  private Listener heard(
      String name, List<Arrival> arriving, int restarts, long seed, Memory memory) {
    var random = new Random(seed);
    try (var topo = new Topo(state.resolve(name), memory)) {
      for (var arrival : arriving) {
        if (restarts > 0 && random.nextInt(restarts) == 0) {
          topo.restart();
        }
        topo.send(arrival);
      }
      assertThat(topo.rejected()).isEmpty();
      return topo.listener();
    }
  }
}
