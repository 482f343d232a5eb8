package org.driftward.ground.failure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.apache.kafka.common.errors.TimeoutException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where failures lie. SQLSTATE classes: PostgreSQL 17 manual, appendix A. */
class FailuresTest {

  @ParameterizedTest
  @CsvSource({
    "22P02, true", // invalid text representation
    "23514, true", // check violation
    "08006, false", // connection failure
    "57P01, false", // admin shutdown
    "53100, false", // disk full
    "40P01, false", // deadlock detected
  })
  void shouldBlameTheItemOnlyForItsData(String state, boolean item) {
    var failure = new IllegalStateException(new SQLException("", state));

    assertThat(Failures.isOfTheItem(failure)).isEqualTo(item);
  }

  @Test
  void shouldNotBlameAnItemForWhatStandsBehindUs() {
    assertThat(Failures.isOfTheItem(new TimeoutException())).isFalse();
    assertThat(Failures.isOfTheItem(new UncheckedIOException(new IOException()))).isFalse();
    assertThat(Failures.isOfTheItem(new NoClassDefFoundError())).isFalse();
  }

  @Test
  void shouldBlameAnItemThatCannotBeRead() {
    assertThat(Failures.isOfTheItem(new IllegalArgumentException())).isTrue();
    assertThat(Failures.isOfTheItem(new StackOverflowError())).isTrue();
  }

  @Test
  void shouldTellTheEndOfTheMachineFromAFullStack() {
    assertThat(Failures.isOfTheMachine(new IllegalStateException(new OutOfMemoryError()))).isTrue();
    assertThat(Failures.isOfTheMachine(new InternalError())).isTrue();
    assertThat(Failures.isOfTheMachine(new StackOverflowError())).isFalse();
  }

  @Test
  void shouldNameClassesAndNoMessages() {
    var failure = new IllegalStateException("V-1", new SQLException("V-1", "08006"));

    assertThat(Failures.kind(failure)).isEqualTo("IllegalStateException by SQLException");
  }

  @Test
  void shouldWorkTheOthersBesideABadItem() {
    var worked = new ArrayList<Integer>();
    var aside = new ArrayList<Integer>();

    Isolation.together(List.of(1, 2, 3), some -> all(some, worked), (item, why) -> aside.add(item));

    assertThat(worked).containsExactly(1, 3);
    assertThat(aside).containsExactly(2);
  }

  @Test
  void shouldSetNothingAsideForWhatLiesElsewhere() {
    var aside = new ArrayList<Integer>();

    assertThatIllegalStateException()
        .isThrownBy(
            () ->
                Isolation.together(
                    List.of(1, 2),
                    some -> {
                      throw new IllegalStateException(new SQLException("", "08006"));
                    },
                    (item, why) -> aside.add(item)));

    assertThat(aside).isEmpty();
  }

  private static void all(List<Integer> items, List<Integer> worked) {
    if (items.contains(2)) {
      throw new IllegalArgumentException("2 cannot be worked");
    }
    worked.addAll(items);
  }
}
