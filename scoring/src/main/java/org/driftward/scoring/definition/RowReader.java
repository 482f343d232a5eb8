package org.driftward.scoring.definition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.scoring.core.score.Applicability.Ages;
import org.driftward.scoring.core.score.Band;
import org.driftward.scoring.core.score.BandException;
import org.driftward.scoring.core.score.Input;
import org.driftward.scoring.core.score.Row;
import org.driftward.scoring.core.score.Span;

/** Reads one entry of {@code rows}: a row of the published table. */
final class RowReader {

  private final Map<String, Input> inputs = new LinkedHashMap<>();
  private final String source;

  /**
   * @param source of the definition; stands where a row names none of its own
   */
  RowReader(List<Input> inputs, String source) {
    inputs.forEach(input -> this.inputs.put(input.code(), input));
    this.source = source;
  }

  Row read(YamlMap map) {
    var input = input(map, "input", map.text("input"));
    int scale = 0;
    var ages = Ages.ALL;
    if (map.has("for")) {
      var selection = map.map("for");
      scale = selection.choice("oxygen-scale", Map.of("1", 1, "2", 2), 0);
      ages = selection.has("age") ? ages(selection.map("age")) : Ages.ALL;
      selection.done();
    }
    var maps = map.maps("bands");
    var bands = new ArrayList<Band>();
    for (var band : maps) {
      bands.add(band(band, input));
      band.done();
    }
    var name = map.text("row");
    var group = map.text("group", input.code());
    var rowSource = map.text("source", source);
    map.done();
    if (bands.isEmpty()) {
      throw map.fault("bands", "a row without bands");
    }
    try {
      return new Row(input, name, group, scale, ages, rowSource, bands);
    } catch (BandException e) {
      throw maps.get(e.band()).fault(e.getMessage());
    }
  }

  static Ages ages(YamlMap map) {
    int from = map.whole("from", 0);
    int upto = map.whole("upto", Integer.MAX_VALUE);
    map.done();
    try {
      return new Ages(from, upto);
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  private Input input(YamlMap map, String field, String code) {
    var input = inputs.get(code);
    if (input == null) {
      throw map.fault(field, code + " is none of the inputs");
    }
    return input;
  }

  private Band band(YamlMap map, Input input) {
    int points = map.whole("points");
    var given = map.has("given") ? given(map.map("given")) : List.<Band.Given>of();
    try {
      if (!input.words().isEmpty()) {
        var words = map.texts("is");
        var text = map.text("text", String.join(" or ", words));
        return Band.words(input.bits(words), given, points, text);
      }
      var span = Spans.read(map);
      var text = map.text("text", Spans.text(span));
      return Band.number(first(span, input), last(span, input), given, points, text);
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  private List<Band.Given> given(YamlMap map) {
    var given = new ArrayList<Band.Given>();
    for (var code : map.fields()) {
      var input = input(map, code, code);
      if (input.words().isEmpty()) {
        throw map.fault(code, code + " is a number; a band may depend on words only");
      }
      try {
        given.add(new Band.Given(input, input.bits(map.texts(code))));
      } catch (IllegalArgumentException e) {
        throw map.fault(code, e.getMessage());
      }
    }
    return given;
  }

  private static long first(Span span, Input input) {
    if (span.low() == null) {
      return Long.MIN_VALUE;
    }
    long edge = input.resolution().edge(span.low());
    return span.lowIn() ? edge : edge + 1;
  }

  private static long last(Span span, Input input) {
    if (span.high() == null) {
      return Long.MAX_VALUE;
    }
    long edge = input.resolution().edge(span.high());
    return span.highIn() ? edge : edge - 1;
  }
}
