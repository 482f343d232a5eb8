package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** On a real PostgreSQL; time is let pass by moving what was said into the past. */
class StoredWatchTest {

  private final TestHouse house = new TestHouse();
  private final StoredWatch watch = new StoredWatch(house.database);

  @Test
  void shouldSayThatNobodyHasEverBeenHeardOf() {
    var now = watch.now();

    assertThat(now.heard()).isFalse();
    assertThat(now.silence()).isNull();
  }

  @Test
  void shouldHearAProcessUntilItIsSilentForTooLong() {
    watch.say("one", List.of(), List.of());
    passes(29);
    assertThat(watch.now().heard()).isTrue();

    passes(2);
    var gone = watch.now();

    assertThat(gone.heard()).isFalse();
    assertThat(gone.silence()).isBetween(Duration.ofSeconds(31), Duration.ofSeconds(50));
    watch.say("one", List.of(), List.of());
    assertThat(watch.now().heard()).isTrue();
  }

  @Test
  void shouldHearTheOneThatIsLeft() {
    watch.say("one", List.of(), List.of());
    passes(60);
    watch.say("other", List.of(), List.of());

    assertThat(watch.now().heard()).isTrue();
    assertThat(watch.now().silence()).isLessThan(Duration.ofSeconds(20));
  }

  @Test
  void shouldNameWhatFailsInEveryProcess() {
    watch.say("one", List.of("ladder-clock", "alarm-sender"), List.of());
    watch.say("other", List.of("alarm-sender", "shift-clock"), List.of());
    assertThat(watch.now().failing()).containsExactly("alarm-sender");

    watch.say("other", List.of(), List.of());
    assertThat(watch.now().failing()).isEmpty();

    passes(60);
    watch.say("one", List.of("ladder-clock"), List.of());
    assertThat(watch.now().failing()).containsExactly("ladder-clock");
  }

  @Test
  void shouldNameAChannelThatIsOffInAnyProcessHeardOf() {
    watch.say("gone", List.of(), List.of("no pager"));
    passes(60);
    watch.say("one", List.of(), List.of("no mail"));
    watch.say("other", List.of(), List.of());

    assertThat(watch.now().off()).containsExactly("no mail");
  }

  @Test
  void shouldForgetProcessesOfYesterday() {
    watch.say("one", List.of(), List.of());
    passes(90_000);
    watch.say("other", List.of(), List.of());
    TestHouse.execute(house.owner, "DELETE FROM alerts.watch WHERE process = 'other'");

    assertThat(watch.now().silence()).isNull();
  }

  private void passes(int seconds) {
    TestHouse.execute(
        house.owner,
        "UPDATE alerts.watch SET heard_at = heard_at - interval '%d seconds'".formatted(seconds));
  }
}
