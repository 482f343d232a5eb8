package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class TimeOfDayTest {

  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  /** Ten past midnight, local time. */
  private static final Instant NOW = Instant.parse("2026-01-05T23:10:00Z");

  @Test
  void shouldTakeALateEntryForTheLastTimeItWasSoLate() {
    assertThat(TimeOfDay.past("23:50", NOW, ZONE)).isEqualTo("2026-01-05T22:50:00Z");
    assertThat(TimeOfDay.past("00:10", NOW, ZONE)).isEqualTo(NOW);
    assertThat(TimeOfDay.past("00:11", NOW, ZONE)).isEqualTo("2026-01-04T23:11:00Z");
  }

  @Test
  void shouldTakeAPlanForTheNextTimeItIsSoLate() {
    assertThat(TimeOfDay.next("07:00", NOW, ZONE)).isEqualTo("2026-01-06T06:00:00Z");
    assertThat(TimeOfDay.next("00:10", NOW, ZONE)).isEqualTo("2026-01-06T23:10:00Z");
  }

  @Test
  void shouldTakeAnEmptyFieldForNoTimeAndRefuseNonsense() {
    assertThat(TimeOfDay.past(" ", NOW, ZONE)).isNull();
    assertThatThrownBy(() -> TimeOfDay.next("soon", NOW, ZONE))
        .isInstanceOf(DateTimeException.class);
  }
}
