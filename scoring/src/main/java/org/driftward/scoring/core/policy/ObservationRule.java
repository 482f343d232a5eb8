package org.driftward.scoring.core.policy;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a set of observations is, and how often one is due.
 *
 * @param core what a complete set holds
 * @param minimum an assessment with at least this many core observations is a set
 * @param longest time between sets when no row says otherwise
 * @param settle when a leading score misses inputs and could be in a stricter row, the next set is
 *     due this soon; null to go by the recorded points alone
 * @param frequencies by score
 */
public record ObservationRule(
    List<Core> core,
    int minimum,
    Duration longest,
    @Nullable Duration settle,
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
   * @param source published table, or {@code local policy}
   */
  public record Row(
      @Nullable Integer total, @Nullable Integer single, Duration interval, String source) {
    public Row {
      Require.positive("observation interval", interval);
      Objects.requireNonNull(source, "source");
      if ((total == null) == (single == null)) {
        throw new IllegalArgumentException(
            "a row of a frequency table goes by total or by single, " + interval + " does not");
      }
    }
  }

  public ObservationRule {
    core = List.copyOf(core);
    frequencies = List.copyOf(frequencies);
    Require.between("observations minimum", minimum, 1, core.size());
    Require.positive("observations longest", longest);
    if (settle != null) {
      Require.positive("observations settle", settle);
    }
  }
}
