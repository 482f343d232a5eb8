package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.contract.UrgentFinding;
import org.jspecify.annotations.Nullable;

/**
 * Says a trigger as a person would: what, which value, when, and which rule it meets. Immutable,
 * thread-safe.
 */
public final class Wording {

  private final Catalogue catalogue;
  private final DateTimeFormatter clock;

  /**
   * @param zone the hospital's own, in which the words give times of day
   */
  public Wording(Catalogue catalogue, ZoneId zone) {
    this.catalogue = catalogue;
    this.clock = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).withZone(zone);
  }

  /**
   * @param total the end of the score that is known to be reached
   * @param why the rule that it meets
   */
  String total(Score score, BigDecimal total, String why, Instant asOf) {
    return reading(score, total)
        + at(asOf)
        + " ("
        + why
        + ")"
        + after(
            ": ", score.inputs().stream().filter(i -> i.points() > 0).map(this::points).toList());
  }

  String possible(Score score, String why, Instant asOf) {
    return "%s %s to %s%s: it may be %s; measure %s to settle it"
        .formatted(
            score.title(),
            plain(score.low()),
            plain(score.high()),
            at(asOf),
            why,
            names(score.missing()));
  }

  String single(ScoredInput input, Score score) {
    return "%s %s%s scores %d in %s"
        .formatted(
            name(input.code()),
            value(input.value().plain(), input.unit()),
            at(input.takenAt()),
            input.points(),
            score.title());
  }

  String rise(Score score, BigDecimal usual, Instant asOf) {
    return "%s%s, %s above this patient's usual %s"
        .formatted(
            reading(score, score.low()),
            at(asOf),
            plain(score.low().subtract(usual)),
            plain(usual));
  }

  /** Its own words say the rule; the time says how old the value is. */
  String urgent(UrgentFinding finding) {
    return finding.words() + at(finding.takenAt());
  }

  String drift(Drift drift, int sets, Instant asOf) {
    return "%s%s, %s spreads %s this patient's usual %s, in %d sets running"
        .formatted(
            reading(drift),
            at(asOf),
            plain(Math.abs(drift.drift())),
            drift.drift() < 0 ? "below" : "above",
            plain(drift.baseline()),
            sets);
  }

  String accumulated(Drift drift, double limit, Instant asOf) {
    return "%s%s has crept %s from this patient's usual %s: accumulated drift %s (limit %s)"
        .formatted(
            reading(drift),
            at(asOf),
            drift.accumulated() < 0 ? "down" : "up",
            plain(drift.baseline()),
            plain(Math.abs(drift.accumulated())),
            plain(limit));
  }

  String trend(Trend trend, Snapshot snapshot) {
    var reaches = trend.threshold() == null ? "its threshold" : plain(trend.threshold());
    return "%s %s by %s an hour over %d values (p %s); may reach %s%s"
        .formatted(
            title(trend.code(), snapshot),
            trend.perHour() < 0 ? "falling" : "rising",
            Plain.rate(trend.perHour()),
            trend.sets(),
            chance(trend.pValue()),
            reaches,
            trend.projectedCrossing() == null ? "" : at(trend.projectedCrossing()));
  }

  /** A chance is never nothing: below what three decimals can say it is said to be below. */
  private static String chance(double pValue) {
    return pValue < 0.001
        ? "below 0.001"
        : BigDecimal.valueOf(pValue).setScale(3, RoundingMode.HALF_UP).toPlainString();
  }

  String changed(Group group, List<ChangedFinding> findings) {
    return sentence(group.word().replace('-', ' '))
        + ": "
        + findings.stream()
            .map(finding -> finding.words() + ", since " + clock.format(finding.since()))
            .collect(Collectors.joining("; "));
  }

  String partial(Snapshot snapshot, int sets) {
    return "%d sets running incomplete; the newest%s lacks %s"
        .formatted(sets, at(Triggers.setOf(snapshot)), names(snapshot.partial()));
  }

  String overdue(@Nullable Instant lastSet, Instant due) {
    return lastSet == null
        ? "No set since admission; the first was due at " + clock.format(due)
        : "No set since %s; the next was due at %s"
            .formatted(clock.format(lastSet), clock.format(due));
  }

  Trigger late(Trigger trigger, Instant asOf) {
    var words = trigger.words() + "; entered late, taken " + clock.format(asOf);
    return new Trigger(trigger.rule(), trigger.severity(), words, trigger.lasting());
  }

  String worry(String name, String note) {
    return name + " is worried" + (note.isBlank() ? "" : ": " + note.strip());
  }

  private String reading(Score score, BigDecimal total) {
    boolean settled = score.low().compareTo(score.high()) == 0;
    var bound = settled ? " " : total.compareTo(score.low()) == 0 ? " at least " : " at most ";
    return score.title() + bound + plain(total);
  }

  private String reading(Drift drift) {
    return name(drift.code())
        + (drift.site() == null ? "" : " " + drift.site().replace('-', ' '))
        + (drift.side() == null ? "" : " " + drift.side().word())
        + " "
        + value(plain(drift.value()), drift.unit());
  }

  private String points(ScoredInput input) {
    return lower(name(input.code()))
        + " "
        + value(input.value().plain(), input.unit())
        + " scores "
        + input.points();
  }

  private String title(String code, Snapshot snapshot) {
    return snapshot.scores().stream()
        .filter(score -> score.id().equals(code))
        .map(Score::title)
        .findFirst()
        .orElseGet(() -> name(code));
  }

  private String names(List<String> codes) {
    return codes.stream().map(code -> lower(name(code))).collect(Collectors.joining(", "));
  }

  private String name(String code) {
    return catalogue
        .find(code)
        .map(CatalogueEntry::name)
        .orElseGet(() -> sentence(code.replace('-', ' ')));
  }

  private String at(Instant time) {
    return " at " + clock.format(time);
  }

  private static String after(String lead, List<String> parts) {
    return parts.isEmpty() ? "" : lead + String.join(", ", parts);
  }

  /** UCUM is for programs; these are the units a person reads otherwise. */
  private static String value(String plain, @Nullable String unit) {
    if (unit == null) {
      return plain;
    }
    return switch (unit) {
      case "mm[Hg]" -> plain + " mmHg";
      case "Cel" -> plain + " °C";
      default -> plain + " " + unit;
    };
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }

  private static String plain(double number) {
    return plain(BigDecimal.valueOf(number).setScale(1, RoundingMode.HALF_UP));
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Not for names that begin with an abbreviation. */
  private static String lower(String name) {
    boolean abbreviated = name.length() > 1 && Character.isUpperCase(name.charAt(1));
    return abbreviated ? name : name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }
}
