package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival.Observed;

/** Promise 1 of the design: order does not matter. */
class OrderProperties {

  @Provide
  Arbitrary<List<Arrival>> stories() {
    return Stories.any(14);
  }

  @Property(tries = 1500)
  void shouldEndTheSameInEveryOrder(
      @ForAll("stories") List<Arrival> story, @ForAll long one, @ForAll long other) {
    var first = run(Stories.arriving(story, one), 0);
    var second = run(Stories.arriving(story, other), 1 + (int) Math.floorMod(one, 5));

    assertThat(second.known()).isEqualTo(first.known());
    assertThat(second.latest()).isEqualTo(first.latest());
  }
}
