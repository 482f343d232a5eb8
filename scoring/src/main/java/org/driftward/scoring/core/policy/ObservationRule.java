package org.driftward.scoring.core.policy;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * What a set of observations is, and how often one is due.
 *
 * @param core what a complete set holds
 * @param minimum an assessment with at least this many core observations is a set
 * @param longest time between sets when no row says otherwise
 * @param settle when a set lacks core observations, or a leading score misses inputs and could be
 *     in a stricter row, the next set is due this soon; null to go by the recorded points alone
 * @param urgent how soon the next set is due after a picture with an urgent finding, by its level
 * @param frequencies by score
 */
public record ObservationRule(
    List<Core> core,
    int minimum,
    Duration longest,
    @Nullable Duration settle,
    Map<Level, Duration> urgent,
    List<Frequency> frequencies) {

  /**
   * One core observation.
   *
   * @param code of the finding
   * @param or these together stand for it; empty where nothing does
   */
  public record Core(String code, List<String> or) {
    public Core {
      Objects.requireNonNull(code, "code");
      or = or == null ? List.of() : List.copyOf(or);
    }
  }

  /**
   * How often a set is due by one score.
   *
   * @param score id of the score definition
   * @param rows the first that fits holds
   */
  public record Frequency(String score, List<Row> rows) {
    public Frequency {
      Objects.requireNonNull(score, "score");
      rows = List.copyOf(rows);
    }
  }

  /**
   * One row of a frequency table.
   *
   * @param total fits a total of at least this; null where the total does not matter
   * @param single fits when one input alone has at least this many points; null likewise
   * @param risk fits this class of risk of the score's definition; null likewise
   * @param source published table, or {@code local policy}
   */
  public record Row(
      @Nullable Integer total,
      @Nullable Integer single,
      @Nullable String risk,
      Duration interval,
      String source) {
    public Row {
      Require.positive("observation interval", interval);
      Objects.requireNonNull(source, "source");
      if (Stream.of(total, single, risk).filter(Objects::nonNull).count() != 1) {
        throw new IllegalArgumentException(
            "a row of a frequency table goes by total, by single or by risk, "
                + interval
                + " does not");
      }
    }

    public boolean fits(int points, int most, String riskClass) {
      if (total != null) {
        return points >= total;
      }
      return single != null ? most >= single : riskClass.equals(risk);
    }
  }

  public ObservationRule {
    core = List.copyOf(core);
    frequencies = List.copyOf(frequencies);
    Require.between("observations minimum", minimum, 1, core.size());
    Require.positive("observations longest", longest);
    urgent = urgent == null ? Map.of() : Map.copyOf(urgent);
    urgent.forEach((level, interval) -> Require.positive("urgent " + level.word(), interval));
    if (settle != null) {
      Require.positive("observations settle", settle);
    }
  }
}
