package org.driftward.ground.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.driftward.ground.part.Part.Condition;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A worker whose rounds fail in every way there is. Pauses are engineering choices. */
@Timeout(60)
class WorkerTest {

  private static final Duration SOON = Duration.ofSeconds(10);
  private static final Duration A_PAUSE = Duration.ofMillis(200);

  private final AtomicInteger rounds = new AtomicInteger();
  private final AtomicInteger ends = new AtomicInteger();
  private final AtomicReference<@Nullable Throwable> failure = new AtomicReference<>();
  private final Worker worker =
      new Worker("test", A_PAUSE, this::round, new Supervisor(ends::incrementAndGet));

  private Duration round() throws Exception {
    rounds.incrementAndGet();
    var thrown = failure.get();
    if (thrown instanceof Error error) {
      throw error;
    }
    if (thrown != null) {
      throw (Exception) thrown;
    }
    return Duration.ofMillis(5);
  }

  @AfterEach
  void stop() {
    worker.stop();
  }

  @ParameterizedTest
  @ValueSource(
      classes = {
        StackOverflowError.class,
        NoClassDefFoundError.class,
        AssertionError.class,
        IllegalStateException.class,
        IOException.class,
        InterruptedException.class
      })
  void shouldSayThatItIsIllAndGoOn(Class<? extends Throwable> kind) throws Exception {
    failure.set(kind.getDeclaredConstructor().newInstance());
    worker.start();
    await().atMost(SOON).until(() -> rounds.get() > 2);
    assertThat(worker.condition())
        .isEqualTo(Condition.ill("trying again after " + kind.getSimpleName()));

    failure.set(null);

    await().atMost(SOON).until(() -> worker.condition().well());
    assertThat(ends).hasValue(0);
  }

  @Test
  void shouldEndTheProcessWhereTheMachineIsAtItsEnd() {
    failure.set(new OutOfMemoryError());

    worker.start();

    await().atMost(SOON).until(() -> ends.get() > 0);
    assertThat(worker.condition().well()).isFalse();
  }

  @Test
  void shouldNotCallAThreadRunningThatHasEnded() {
    var doomed =
        new Worker(
            "doomed",
            A_PAUSE,
            () -> {
              throw new OutOfMemoryError();
            },
            new Supervisor(
                () -> {
                  throw new IllegalStateException("ends the thread, as nothing should");
                }));

    doomed.start();

    await()
        .dontCatchUncaughtExceptions()
        .atMost(SOON)
        .until(() -> doomed.condition().why().equals("its thread has ended"));
    assertThat(doomed.condition().well()).isFalse();
  }

  @Test
  void shouldKeepWhatARoundSaysOfItself() {
    var some = Condition.but("one item is set aside");
    var said = new AtomicReference<Worker>();
    said.set(
        new Worker(
            "said",
            () -> {
              said.get().say(some);
              return Duration.ofMillis(5);
            }));

    said.get().start();

    await()
        .during(Duration.ofMillis(100))
        .atMost(SOON)
        .until(() -> said.get().condition().equals(some));
    said.get().stop();
    assertThat(said.get().condition()).isEqualTo(Condition.ill("stopped"));
  }

  @Test
  void shouldNotRestWhenTheBellRings() {
    var slow =
        new Worker(
            "slow",
            () -> {
              rounds.incrementAndGet();
              return Duration.ofHours(1);
            });
    slow.start();
    await().atMost(SOON).until(() -> rounds.get() == 1);

    slow.ring();

    await().atMost(SOON).until(() -> rounds.get() == 2);
    slow.stop();
  }

  @Test
  void shouldInterruptARoundThatDoesNotEnd() {
    var stuck =
        new Worker(
            "stuck",
            () -> {
              TimeUnit.HOURS.sleep(1);
              return Duration.ZERO;
            });
    stuck.start();

    stuck.stop();

    assertThat(stuck.condition()).isEqualTo(Condition.ill("stopped"));
  }
}
