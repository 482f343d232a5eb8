package org.driftward.dashboard.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class BedOrderTest {

  @Test
  void shouldCountAsAPersonDoes() {
    var beds = List.of("10", "B2", "2", "B10", "A11", "B2a", "02", "A9");

    assertThat(beds.stream().sorted(BedOrder.INSTANCE))
        .containsExactly("02", "2", "10", "A9", "A11", "B2", "B2a", "B10");
  }

  @Property
  void shouldBeATotalOrder(
      @ForAll
          @CharRange(from = '0', to = '3')
          @CharRange(from = 'a', to = 'b')
          @StringLength(max = 5)
          String a,
      @ForAll
          @CharRange(from = '0', to = '3')
          @CharRange(from = 'a', to = 'b')
          @StringLength(max = 5)
          String b,
      @ForAll
          @CharRange(from = '0', to = '3')
          @CharRange(from = 'a', to = 'b')
          @StringLength(max = 5)
          String c) {
    Comparator<String> order = BedOrder.INSTANCE;

    assertThat(Integer.signum(order.compare(a, b))).isEqualTo(-Integer.signum(order.compare(b, a)));
    assertThat(order.compare(a, b) == 0).isEqualTo(a.equals(b));
    if (order.compare(a, b) <= 0 && order.compare(b, c) <= 0) {
      assertThat(order.compare(a, c)).isLessThanOrEqualTo(0);
    }
  }
}
