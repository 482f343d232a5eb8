package org.driftward.scoring.stream.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class KnownIdsTest {

  @Property
  void shouldHoldWhatWasAddedAndDenyOnlyWhatWasNot(
      @ForAll List<String> added, @ForAll List<String> others) {
    var ids = KnownIds.none();
    added.forEach(ids::add);

    assertThat(added).allMatch(ids::mayHold);
    var hashes = Set.copyOf(added.stream().map(String::hashCode).toList());
    for (var other : others) {
      assertThat(ids.mayHold(other)).isEqualTo(hashes.contains(other.hashCode()));
    }
  }

  /** Both hash to 2112. */
  @Test
  void shouldNotDenyWhatOnlyLooksTheSame() {
    var ids = KnownIds.none();
    ids.add("Aa");

    assertThat(ids.mayHold("BB")).isTrue();
    assertThat(ids.mayHold("AB")).isFalse();
  }

  @Test
  void shouldDenyNothingOfAnEncounterWhoseBeginningItHasNotSeen() {
    var ids = KnownIds.some();
    ids.add("A-1");

    assertThat(ids.mayHold("A-2")).isTrue();
  }

  @Test
  void shouldDenyNothingAnyMoreOnceThereAreTooMany() {
    var ids = KnownIds.none();
    for (int i = 0; i < KnownIds.MOST; i++) {
      ids.add("A-" + i);
      ids.add("A-" + i);
    }
    assertThat(ids.mayHold("B-1")).isFalse();

    ids.add("A-more");

    assertThat(ids.mayHold("B-1")).isTrue();
    assertThat(ids.mayHold("A-0")).isTrue();
  }
}
