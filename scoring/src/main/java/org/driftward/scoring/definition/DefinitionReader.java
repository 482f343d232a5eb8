package org.driftward.scoring.definition;

import java.io.Reader;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.score.Aggregate;
import org.driftward.scoring.core.score.Applicability;
import org.driftward.scoring.core.score.Applicability.Ages;
import org.driftward.scoring.core.score.Input;
import org.driftward.scoring.core.score.RiskClass;
import org.driftward.scoring.core.score.Row;
import org.driftward.scoring.core.score.ScoreDefinition;
import org.driftward.scoring.core.score.ScoreDefinition.Shown;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** Reads one file: one score definition. */
final class DefinitionReader {

  private static final Duration HALF_A_DAY = Duration.ofHours(12);

  private final Catalogue catalogue;

  DefinitionReader(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /**
   * @param file its name, for faults
   * @throws BrokenDefinitionException naming file and line
   */
  ScoreDefinition read(String file, Reader text) {
    try {
      return read(new YamlMap(file, new Yaml(new LoaderOptions()).compose(text)));
    } catch (MarkedYAMLException e) {
      int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
      throw new BrokenDefinitionException(file, line, e.getProblem());
    }
  }

  private ScoreDefinition read(YamlMap map) {
    var source = map.text("source");
    var serves = map.duration("serves", HALF_A_DAY);
    var inputs = inputs(map, new InputReader(new SourceReader(catalogue, serves)));
    var rowReader = new RowReader(inputs, source);
    var rows = new ArrayList<Row>();
    if (map.has("rows")) {
      map.maps("rows").forEach(row -> rows.add(rowReader.read(row)));
    }
    try {
      var definition =
          new ScoreDefinition(
              map.text("id"),
              map.text("title"),
              map.text("version"),
              map.whole("rank"),
              source,
              map.texts("notes"),
              applicability(map),
              map.choice(
                  "shown",
                  Map.of("always", Shown.ALWAYS, "begun", Shown.BEGUN, "complete", Shown.COMPLETE),
                  Shown.BEGUN),
              map.choice("worse", Map.of("higher", false, "lower", true), false),
              inputs,
              rows,
              aggregate(map, inputs),
              risks(map));
      map.done();
      return definition;
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  private static List<Input> inputs(YamlMap map, InputReader reader) {
    var inputs = new ArrayList<Input>();
    var codes = new HashMap<String, Input>();
    for (var item : map.maps("inputs")) {
      var input = reader.read(item, inputs.size());
      if (codes.put(input.code(), input) != null) {
        throw item.fault("code", input.code() + " is listed twice");
      }
      inputs.add(input);
    }
    return inputs;
  }

  private static Applicability applicability(YamlMap map) {
    var applies = map.map("applies-to");
    var ages = Ages.ALL;
    boolean unknown = true;
    var atAnyAge = Set.<String>of();
    if (applies.has("age")) {
      var age = applies.map("age");
      unknown = age.choice("unknown", Map.of("assumed", true, "excluded", false), false);
      atAnyAge = Set.copyOf(age.texts("or-population"));
      ages = RowReader.ages(age);
    }
    var required = Set.copyOf(applies.texts("required"));
    var excluded = Set.copyOf(applies.texts("excluded"));
    var notFor = applies.texts("not-for");
    applies.done();
    try {
      return new Applicability(ages, unknown, atAnyAge, required, excluded, notFor);
    } catch (IllegalArgumentException e) {
      throw applies.fault(e.getMessage());
    }
  }

  private static Aggregate aggregate(YamlMap map, List<Input> inputs) {
    if (!map.has("ratio")) {
      return map.choice(
          "aggregate",
          Map.of("sum", new Aggregate.Sum(), "max", new Aggregate.Max()),
          new Aggregate.Sum());
    }
    var ratio = map.map("ratio");
    var over = sums(ratio, "over", inputs);
    var under = sums(ratio, "under", inputs);
    int digits = ratio.whole("digits");
    ratio.done();
    try {
      return new Aggregate.Ratio(over, under, digits);
    } catch (IllegalArgumentException e) {
      throw ratio.fault(e.getMessage());
    }
  }

  private static List<Map<Integer, BigDecimal>> sums(
      YamlMap ratio, String field, List<Input> inputs) {
    var sums = new ArrayList<Map<Integer, BigDecimal>>();
    for (var item : ratio.maps(field)) {
      var sum = new LinkedHashMap<Integer, BigDecimal>();
      for (var code : item.fields()) {
        var input =
            inputs.stream()
                .filter(one -> one.code().equals(code) && one.words().isEmpty())
                .findFirst()
                .orElseThrow(() -> item.fault(code, code + " is no number among the inputs"));
        sum.put(input.place(), item.number(code));
      }
      sums.add(sum);
    }
    return sums;
  }

  private static List<RiskClass> risks(YamlMap map) {
    var risks = new ArrayList<RiskClass>();
    for (var item : map.maps("risks")) {
      risks.add(
          new RiskClass(
              item.text("id"), Spans.read(item), item.whole("single", 0), item.text("response")));
      item.done();
    }
    return risks;
  }
}
