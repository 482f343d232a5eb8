package org.driftward.alerts.core.trigger;

import java.util.Comparator;
import java.util.Map;
import java.util.Objects;
import org.driftward.ingest.contract.Level;

/**
 * A rule that a picture of the patient meets.
 *
 * @param rule stable lower-case word with hyphens; where a rule can be met by several things it
 *     names the thing: {@code drift-heart-rate}
 * @param words the rule and what met it, as a person would say it
 * @param lasting whether it takes sustained recovery to lay it to rest; otherwise it is gone with
 *     the first set that does not meet it
 */
public record Trigger(String rule, Severity severity, String words, boolean lasting) {

  public static final Comparator<Trigger> GRAVEST_FIRST =
      Comparator.comparing(Trigger::level).reversed().thenComparing(Trigger::rule);

  /** Rules by which a person says to be worried; only a person lays one to rest. */
  private static final String WORRY = "worry";

  public Trigger {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(words, "words");
  }

  Trigger(String rule, Level level, Map<String, Double> degrees, String words, boolean lasting) {
    this(rule, new Severity(level, degrees), words, lasting);
  }

  public Level level() {
    return severity.level();
  }

  static String worryOf(String code) {
    return WORRY + "-" + code;
  }

  public static boolean isWorry(String rule) {
    return rule.equals(WORRY) || rule.startsWith(WORRY + "-");
  }

  /** The same rule met twice: in the words of the graver. */
  public Trigger and(Trigger other) {
    var graver = other.level().compareTo(level()) > 0 ? other : this;
    return new Trigger(rule, severity.and(other.severity), graver.words, lasting || other.lasting);
  }

  @Override
  public String toString() {
    return "Trigger[" + rule + " " + level().word() + "]";
  }
}
