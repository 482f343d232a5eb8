package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.driftward.scoring.contract.Scalar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 24 h time, units always, no trailing zeros: practice.md section 8, identity; from memory. */
class WordingTest {

  @ParameterizedTest
  @CsvSource({
    "PT0S, under 1 min",
    "PT59S, under 1 min",
    "PT1M, 1 min",
    "PT59M59S, 59 min",
    "PT1H, 1 h",
    "PT1H5M, 1 h 05 min",
    "PT23H59M, 23 h 59 min",
    "PT24H, 1 d",
    "PT51H, 2 d 3 h",
    "-PT4M30S, 4 min"
  })
  void shouldWriteASpanInWholeUnits(Duration span, String words) {
    assertThat(Wording.span(span)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({"37.0, 37", "37.50, 37.5", "120, 120", "1E+2, 100", "0.0, 0", "-2.40, −2.4"})
  void shouldWriteNumbersWithoutTrailingZeros(BigDecimal number, String words) {
    assertThat(Wording.number(number)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({"4.249, +4.2", "-2.35, −2.4", "0.04, 0", "-0.04, 0"})
  void shouldWriteTheSignOfAChange(double number, String words) {
    assertThat(Wording.signed(number, 1)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({"mm[Hg], 120 mmHg", "Cel, 120 °C", "/min, 120 /min", "'%', '120 %'", ", 120"})
  void shouldPutTheUnitAWardWritesBesideTheNumber(String ucum, String words) {
    assertThat(Wording.value(Scalar.of(new BigDecimal("120.0")), ucum)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({
    "1951-03-09, 74 y",
    "1951-01-05, 75 y",
    "1951-01-06, 74 y",
    "2024-01-05, 2 y",
    "2024-01-06, 23 months",
    "2025-12-05, 1 month",
    "2025-12-06, 30 days"
  })
  void shouldWriteAnAgeInTheUnitThatSuitsIt(LocalDate born, String words) {
    assertThat(Wording.age(born, LocalDate.of(2026, 1, 5))).isEqualTo(words);
  }

  @Test
  void shouldSayThatAnAgeIsUnknown() {
    assertThat(Wording.age(null, LocalDate.of(2026, 1, 5))).isEqualTo("age unknown");
  }

  @Test
  void shouldGiveTheDayOnlyWhereItIsNotToday() {
    var now = Instant.parse("2026-01-05T03:12:00Z");
    assertThat(Wording.time(Instant.parse("2026-01-05T00:00:00Z"), now, ZoneOffset.UTC))
        .isEqualTo("00:00");
    assertThat(Wording.time(Instant.parse("2026-01-04T23:59:00Z"), now, ZoneOffset.UTC))
        .isEqualTo("4 Jan 23:59");
    assertThat(Wording.time(Instant.parse("2026-01-04T23:59:00Z"), now, ZoneId.of("Europe/Oslo")))
        .isEqualTo("00:59");
  }
}
