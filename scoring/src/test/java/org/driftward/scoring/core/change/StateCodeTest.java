package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.change.Forming.Waiting;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StateCodeTest {

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());

  @Test
  void shouldKeepNothingInAFewBytes() {
    assertThat(SeriesState.empty().encode()).hasSizeLessThan(8);
    assertThat(SeriesState.decode(SeriesState.empty().encode())).isEqualTo(SeriesState.empty());
  }

  /** A full window, a settled baseline and both sums: what a long stay looks like. */
  @Test
  void shouldKeepALongStayInUnderAHundredBytes() {
    var course = Course.of(detector, "temperature", "Cel");
    for (int i = 0; i < 40; i++) {
      course.hourly(36.5 + (i * 7 % 13) / 10.0);
    }

    assertThat(course.state().window().size()).isEqualTo(16);
    assertThat(course.state().quiet()).isInstanceOf(Settled.class);
    assertThat(course.state().encode()).hasSizeLessThan(100);
    assertThat(course.state()).isEqualTo(course.reload().state());
  }

  @Test
  void shouldKeepEveryPartExactly() {
    var state =
        new SeriesState(
            new Forming(new double[] {1 / 3.0, -0.0, 1e300}, 1, 2, new Waiting(3, Math.PI)),
            4,
            new Cusum(0.1, 1 / 7.0),
            5,
            new Window(new long[] {-1, 6_001, 120_000}, new double[] {1e-7, 36.6, -5}));

    assertThat(SeriesState.decode(state.encode())).isEqualTo(state);
  }

  @Test
  void shouldKeepASettledBaselineExactly() {
    var state =
        new SeriesState(
            new Settled(new Baseline(80.5, 1.4826 * 3, 12, 60_000, 86_400_000)),
            SeriesState.NEVER,
            Cusum.ZERO,
            SeriesState.NEVER,
            Window.EMPTY);

    assertThat(SeriesState.decode(state.encode())).isEqualTo(state);
  }

  @Test
  void shouldRefuseAnotherForm() {
    var bytes = SeriesState.empty().encode();
    bytes[0] = 9;

    assertThatThrownBy(() -> SeriesState.decode(bytes))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("form 1");
  }

  @Test
  void shouldRefuseAnUnknownUnitOfTimeAndAnUnknownCountOfDecimals() {
    assertThatThrownBy(() -> SeriesState.decode(new byte[] {1, 3 << 5, 0, 0, 0}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("unit of time");
    assertThatThrownBy(() -> SeriesState.decode(new byte[] {1, 0, 8, 0, 0}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("8 decimals");
  }

  @Test
  void shouldWriteWholeMinutesInTwoBytesAValue() {
    var course = Course.of(detector, "news2", ChangeDetector.SCORE_UNIT);
    for (int i = 0; i < 16; i++) {
      course.at(Course.START.plus(Duration.ofMinutes(60L * i)), i % 3);
    }

    assertThat(course.state().encode().length).isLessThan(16 * 3 + 20);
  }

  /** Nothing that may end up in a log. */
  @Test
  void shouldSayHowMuchAStateHoldsAndNeverWhat() {
    var course = Course.of(detector, "temperature", "Cel").hourly(39.9, 39.8, 39.7);

    assertThat(course.state().window()).hasToString("Window[3 values]");
    assertThat(course.state().quiet()).hasToString("Forming[2 values]");
  }

  /** Equal content is equal, whatever array it lies in; any other content is not. */
  @Test
  void shouldTellStatesApartByEveryPartOfThem() {
    var window = new Window(new long[] {1, 2}, new double[] {3, 4});
    assertThat(window).isEqualTo(new Window(new long[] {1, 2}, new double[] {3, 4}));
    assertThat(window).hasSameHashCodeAs(new Window(new long[] {1, 2}, new double[] {3, 4}));
    assertThat(window).isNotEqualTo(new Window(new long[] {1, 3}, new double[] {3, 4}));
    assertThat(window).isNotEqualTo(new Window(new long[] {1, 2}, new double[] {3, 5}));

    var waiting = new Waiting(5, 6);
    var forming = new Forming(new double[] {7}, 8, 9, waiting);
    assertThat(forming).isEqualTo(new Forming(new double[] {7}, 8, 9, new Waiting(5, 6)));
    assertThat(forming).hasSameHashCodeAs(new Forming(new double[] {7}, 8, 9, waiting));
    assertThat(forming).isNotEqualTo(new Forming(new double[] {0}, 8, 9, waiting));
    assertThat(forming).isNotEqualTo(new Forming(new double[] {7}, 0, 9, waiting));
    assertThat(forming).isNotEqualTo(new Forming(new double[] {7}, 8, 0, waiting));
    assertThat(forming).isNotEqualTo(new Forming(new double[] {7}, 8, 9, new Waiting(5, 0)));
    assertThat(forming).isNotEqualTo(new Forming(new double[] {7}, 8, 9, null));
    assertThat(new Forming(new double[] {7}, 8, 9, null))
        .isEqualTo(new Forming(new double[] {7}, 8, 9, null))
        .isNotEqualTo(forming);
  }

  /** Numbers that no few decimals write take eight bytes each, and more room than was set aside. */
  @Test
  void shouldKeepALongWindowOfAwkwardNumbersExactly() {
    var times = new long[48];
    var values = new double[48];
    for (int i = 0; i < times.length; i++) {
      times[i] = 7_777L * i * i;
      values[i] = Math.sqrt(i + 2);
    }
    var state =
        new SeriesState(
            Forming.EMPTY,
            SeriesState.NEVER,
            Cusum.ZERO,
            SeriesState.NEVER,
            new Window(times, values));

    assertThat(state.encode()).hasSizeGreaterThan(48 * 8);
    assertThat(SeriesState.decode(state.encode())).isEqualTo(state);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e300, 0x1p53, 0x1p53 - 1, -0x1p53, 0.0, -0.0, 1e-7, 123456.789012})
  void shouldKeepAnyNumberExactly(double value) {
    var state =
        new SeriesState(
            Forming.EMPTY,
            SeriesState.NEVER,
            Cusum.ZERO,
            SeriesState.NEVER,
            new Window(new long[] {0}, new double[] {value}));

    assertThat(SeriesState.decode(state.encode())).isEqualTo(state);
  }

  /** Whole minutes take less than whole seconds, and these less than milliseconds. */
  @Test
  void shouldCountTimesInTheCoarsestUnitThatFits() {
    assertThat(threeHourly(0).length).isLessThan(threeHourly(1_000).length);
    assertThat(threeHourly(1_000).length).isLessThan(threeHourly(1).length);
  }

  private byte[] threeHourly(long off) {
    var course = Course.of(detector, "news2", ChangeDetector.SCORE_UNIT);
    for (int i = 0; i < 8; i++) {
      course.at(Course.START.plus(Duration.ofHours(3L * i)).plusMillis(off), i % 3);
    }
    return course.state().encode();
  }

  @Test
  void shouldRefuseANumberThatNeverEnds() {
    var bytes = new byte[20];
    java.util.Arrays.fill(bytes, (byte) 0xFF);
    bytes[0] = 1;
    bytes[1] = 0;
    bytes[2] = 0;

    assertThatThrownBy(() -> SeriesState.decode(bytes))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("64 bits");
  }
}
