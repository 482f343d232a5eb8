package org.driftward.ingest.hl7;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** HL7 v2.5.1 chapter 2A, data type DTM: {@code YYYY[MM[DD[HH[MM[SS[.S[S[S[S]]]]]]]]][+/-ZZZZ]}. */
class Hl7TimeTest {

  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final Instant NOON = Instant.parse("2026-01-05T12:00:00Z");

  @ParameterizedTest
  @CsvSource({
    "202601051150+0000, 2026-01-05T11:50:00Z",
    "20260105115030-0500, 2026-01-05T16:50:30Z",
    "20260105115030.25+0130, 2026-01-05T10:20:30.250Z",
    "20260105115030.1234+0000, 2026-01-05T11:50:30.123400Z",
    "202601051150, 2026-01-05T10:50:00Z",
  })
  void shouldReadATimeToTheMinuteOrFiner(String text, Instant expected) {
    assertThat(new Hl7Time(BERLIN, NOON).moment(text)).contains(expected);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2026",
        "20260105",
        "2026010511",
        "202613051150",
        "202602301150",
        "202601052450",
        "20260105115061",
        "202601051150+9900",
        "2026-01-05T11:50",
        "202601051150Z",
        "x"
      })
  void shouldReadNoTimeInAnythingElse(String text) {
    assertThat(new Hl7Time(BERLIN, NOON).moment(text)).isEmpty();
  }

  @Test
  void shouldNotGuessATimeZone() {
    assertThat(new Hl7Time(null, NOON).moment("202601051150")).isEmpty();
  }

  @Test
  void shouldTakeTheOffsetOfTheHeaderForTheWholeMessage() {
    // Chapter 2, MSH-7: a time zone there is the default of the message.
    assertThat(Hl7Time.zoneOf("20260105115500+0200", Optional.of(BERLIN)))
        .isEqualTo(ZoneOffset.ofHours(2));
    assertThat(Hl7Time.zoneOf("20260105115500", Optional.of(BERLIN))).isEqualTo(BERLIN);
    assertThat(Hl7Time.zoneOf("20260105115500", Optional.empty())).isNull();
  }

  /** Clocks in Berlin went from 02:00 to 03:00 on 2026-03-29: IANA time zone database. */
  @Test
  void shouldReadNoTimeThatTheClockJumpsOver() {
    assertThat(new Hl7Time(BERLIN, NOON).moment("202603290230")).isEmpty();
  }

  /** Clocks in Berlin went from 03:00 CEST to 02:00 CET on 2025-10-26: IANA database. */
  @Test
  void shouldReadTheLaterOfTwoSameHoursUnlessItIsYetToCome() {
    var between = Instant.parse("2025-10-26T00:45:00Z");
    var after = Instant.parse("2025-10-26T01:45:00Z");

    assertThat(new Hl7Time(BERLIN, between).moment("202510260230"))
        .contains(Instant.parse("2025-10-26T00:30:00Z"));
    assertThat(new Hl7Time(BERLIN, after).moment("202510260230"))
        .contains(Instant.parse("2025-10-26T01:30:00Z"));
  }

  @Test
  void shouldReadADayFromATimeOfAnyPrecision() {
    assertThat(Hl7Time.day("19480920")).contains(LocalDate.of(1948, 9, 20));
    assertThat(Hl7Time.day("194809201130")).contains(LocalDate.of(1948, 9, 20));
    assertThat(Hl7Time.day("194809")).isEmpty();
    assertThat(Hl7Time.day("19480931")).isEmpty();
  }
}
