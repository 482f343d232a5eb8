package org.driftward.alerts.core.policy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.driftward.scoring.contract.Score;
import org.jspecify.annotations.Nullable;

/**
 * What one score asks for. Each score brings its own: 5 points of one are not 5 points of another.
 *
 * @param score id of the score
 * @param worse which way its total is worse; higher unless said otherwise
 * @param totals thresholds on the total
 * @param risks classes of risk by their id
 * @param single a single input that scores this many points, or null
 * @param rise over the patient's own usual level, or null
 */
public record ScoreResponse(
    String score,
    Worse worse,
    List<Total> totals,
    List<Risk> risks,
    @Nullable Single single,
    @Nullable Rise rise) {

  /** The worse direction of a total. */
  public enum Worse implements Word {
    HIGHER,
    LOWER
  }

  /**
   * @param at this total or worse
   */
  public record Total(BigDecimal at, Level level, String source) {
    public Total {
      Objects.requireNonNull(at, "at");
      sourced(level, source);
    }
  }

  /**
   * @param risk id of the class in the score's definition
   */
  public record Risk(String risk, Level level, String source) {
    public Risk {
      Objects.requireNonNull(risk, "risk");
      sourced(level, source);
    }
  }

  public record Single(int points, Level level, String source) {
    public Single {
      sourced(level, source);
    }
  }

  public record Rise(BigDecimal by, Level level, String source) {
    public Rise {
      Objects.requireNonNull(by, "by");
      sourced(level, source);
    }
  }

  /**
   * A rule of a response that a total meets.
   *
   * @param why the rule, for example {@code 7 or more}
   */
  public record Reached(Level level, String why) {}

  public ScoreResponse {
    Objects.requireNonNull(score, "score");
    worse = worse == null ? Worse.HIGHER : worse;
    totals = totals == null ? List.of() : List.copyOf(totals);
    risks = risks == null ? List.of() : List.copyOf(risks);
    if (totals.isEmpty() && risks.isEmpty()) {
      throw new IllegalArgumentException("the response to " + score + " names no total or risk");
    }
  }

  /** The end of the score that is known to be reached at least. */
  public BigDecimal atLeast(Score of) {
    return worse == Worse.HIGHER ? of.low() : of.high();
  }

  /** The end that may be reached, missing inputs taken at their worst. */
  public BigDecimal atWorst(Score of) {
    return worse == Worse.HIGHER ? of.high() : of.low();
  }

  /** How bad a total is, in points: larger is worse. */
  public double degree(BigDecimal total) {
    return (worse == Worse.HIGHER ? total : total.negate()).doubleValue();
  }

  /** The gravest rule that the total, or its class of risk, meets; the strictest of those. */
  public Optional<Reached> reached(BigDecimal total, String risk) {
    return Stream.concat(
            totals.stream().filter(rule -> meets(total, rule)).map(this::reached),
            risks.stream().filter(rule -> rule.risk().equals(risk)).map(ScoreResponse::reached))
        .reduce((a, b) -> b.level().compareTo(a.level()) > 0 ? b : a);
  }

  private boolean meets(BigDecimal total, Total rule) {
    int over = total.compareTo(rule.at());
    return worse == Worse.HIGHER ? over >= 0 : over <= 0;
  }

  private Reached reached(Total rule) {
    var at = rule.at().stripTrailingZeros().toPlainString();
    return new Reached(rule.level(), at + (worse == Worse.HIGHER ? " or more" : " or less"));
  }

  private static Reached reached(Risk rule) {
    return new Reached(rule.level(), "class " + rule.risk().replace('-', ' '));
  }

  private static void sourced(Level level, String source) {
    Objects.requireNonNull(level, "level");
    if (source == null || source.isBlank()) {
      throw new IllegalArgumentException("a threshold without a source: say \"local policy\"");
    }
  }
}
