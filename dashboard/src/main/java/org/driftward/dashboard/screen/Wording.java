package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Map;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * How times, ages, numbers and units are written: 24 h time, a unit beside every quantity, no
 * trailing zeros (practice.md, section 8).
 */
public final class Wording {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY_TIME =
      DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.UK);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);

  /** UCUM codes that a ward writes otherwise. */
  private static final Map<String, String> UNITS =
      Map.of("/min", "/min", "mm[Hg]", "mmHg", "Cel", "°C", "{score}", "", "1", "");

  private Wording() {}

  /** {@code 4 min}, {@code 1 h 05 min}, {@code 2 d 3 h}; whole minutes, never rounded up. */
  public static String span(Duration span) {
    long minutes = span.abs().toMinutes();
    if (minutes < 1) {
      return "under 1 min";
    }
    if (minutes < 60) {
      return minutes + " min";
    }
    long hours = minutes / 60;
    if (hours < 24) {
      return minutes % 60 == 0 ? hours + " h" : "%d h %02d min".formatted(hours, minutes % 60);
    }
    return hours % 24 == 0 ? hours / 24 + " d" : "%d d %d h".formatted(hours / 24, hours % 24);
  }

  /** {@code 03:12}, with the day where it is not today's. */
  public static String time(Instant time, Instant now, ZoneId zone) {
    var there = time.atZone(zone);
    return (there.toLocalDate().equals(now.atZone(zone).toLocalDate()) ? TIME : DAY_TIME)
        .format(there);
  }

  public static String date(LocalDate date) {
    return DATE.format(date);
  }

  /** {@code 74 y}; months below two years and days below a month, as is usual for children. */
  public static String age(@Nullable LocalDate born, LocalDate today) {
    if (born == null) {
      return "age unknown";
    }
    var age = Period.between(born, today);
    if (age.getYears() >= 2) {
      return age.getYears() + " y";
    }
    return age.toTotalMonths() >= 1
        ? count(age.toTotalMonths(), "month", "months")
        : count(ChronoUnit.DAYS.between(born, today), "day", "days");
  }

  public static String number(BigDecimal number) {
    var stripped = number.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped)
        .toPlainString()
        .replace('-', '−');
  }

  /** At most {@code decimals} places. */
  public static String number(double number, int decimals) {
    return number(BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP));
  }

  /** With its sign, a true minus. */
  public static String signed(double number, int decimals) {
    var rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    return (rounded.signum() > 0 ? "+" : "") + number(rounded);
  }

  /** A number with its unit, or the word itself. */
  public static String value(Scalar value, @Nullable String unit) {
    return value.number() == null
        ? value.plain().replace('-', ' ')
        : withUnit(number(value.number()), unit);
  }

  public static String withUnit(String number, @Nullable String unit) {
    String written = unit(unit);
    return written.isEmpty() ? number : number + " " + written;
  }

  /** How a ward writes a UCUM unit. */
  public static String unit(@Nullable String ucum) {
    return ucum == null ? "" : UNITS.getOrDefault(ucum, ucum);
  }

  /** {@code limb-circulation} becomes {@code Limb circulation}. */
  public static String sentence(String word) {
    return word.isEmpty()
        ? word
        : Character.toUpperCase(word.charAt(0)) + word.substring(1).replace('-', ' ');
  }

  /** {@code one patient}, {@code 3 patients}: a count with its noun. */
  public static String count(long count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }
}
