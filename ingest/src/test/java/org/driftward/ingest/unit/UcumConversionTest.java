package org.driftward.ingest.unit;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UcumConversionTest {

  private final UcumConversion conversion = new UcumConversion();

  /** Definition: C = (F - 32) x 5/9. 100.4 F is exactly 38.0 Cel, the edge of a NEWS2 band. */
  @ParameterizedTest
  @CsvSource({
    "95.0, 35",
    "96.8, 36",
    "96.98, 36.1",
    "98.6, 37",
    "100.4, 38",
    "100.94, 38.3",
    "101.3, 38.5",
    "102.2, 39",
    "102.38, 39.1",
    "104.0, 40",
    "100.5, 38.055556"
  })
  void shouldConvertFahrenheit(BigDecimal fahrenheit, BigDecimal celsius) {
    assertThat(conversion.convert(fahrenheit, "[degF]", "Cel"))
        .hasValueSatisfying(value -> assertThat(value).isEqualByComparingTo(celsius));
  }

  /** 1 kPa = 7.500615758 mmHg (133.322387415 Pa; UCUM defines mm[Hg] as 133.322 Pa). */
  @ParameterizedTest
  @CsvSource({"8, 60.005", "10, 75.006", "12, 90.007", "13.3, 99.758", "16, 120.010"})
  void shouldConvertKilopascal(BigDecimal kilopascal, BigDecimal mercury) {
    assertThat(conversion.convert(kilopascal, "kPa", "mm[Hg]"))
        .hasValueSatisfying(
            value -> assertThat(value).isCloseTo(mercury, within(new BigDecimal("0.001"))));
  }

  @Test
  void shouldKeepAValueThatIsInTheUnitAlready() {
    assertThat(conversion.convert(new BigDecimal("36.80"), "Cel", "Cel"))
        .contains(new BigDecimal("36.80"));
  }

  @ParameterizedTest
  @CsvSource({"mmHg, mm[Hg]", "C, Cel", "bpm, /min", "kg, Cel", "'', Cel", "[degF, Cel"})
  void shouldNotGuessAtAnythingElse(String from, String to) {
    assertThat(conversion.convert(BigDecimal.TEN, from, to)).isEmpty();
  }

  private static org.assertj.core.data.Offset<BigDecimal> within(BigDecimal offset) {
    return org.assertj.core.data.Offset.offset(offset);
  }
}
