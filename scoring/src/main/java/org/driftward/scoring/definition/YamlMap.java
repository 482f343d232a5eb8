package org.driftward.scoring.definition;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A YAML mapping that remembers its lines and which of its fields were read, so that a mistake is
 * named with its place and a misspelt field is not passed over.
 */
final class YamlMap {

  private final String file;
  private final Node node;
  private final Map<String, Node> fields = new LinkedHashMap<>();
  private final Map<String, Node> keys = new LinkedHashMap<>();
  private final Set<String> unread = new LinkedHashSet<>();

  YamlMap(String file, @Nullable Node node) {
    this.file = file;
    if (!(node instanceof MappingNode mapping)) {
      throw new BrokenDefinitionException(
          file, node == null ? 1 : line(node), "fields are expected here");
    }
    this.node = node;
    for (var tuple : mapping.getValue()) {
      var key = scalar(tuple.getKeyNode());
      if (fields.put(key, tuple.getValueNode()) != null) {
        throw new BrokenDefinitionException(
            file, line(tuple.getKeyNode()), key + " is given twice");
      }
      keys.put(key, tuple.getKeyNode());
      unread.add(key);
    }
  }

  Set<String> fields() {
    return fields.keySet();
  }

  boolean has(String field) {
    return fields.containsKey(field);
  }

  /** Refuses the first field that nobody read. */
  void done() {
    for (var field : unread) {
      throw fault(field, "unknown field " + field);
    }
  }

  String text(String field) {
    return scalar(required(field));
  }

  String text(String field, String otherwise) {
    return has(field) ? text(field) : otherwise;
  }

  int whole(String field) {
    return parse(field, "a whole number", Integer::valueOf);
  }

  int whole(String field, int otherwise) {
    return has(field) ? whole(field) : otherwise;
  }

  BigDecimal number(String field) {
    return parse(field, "a number", BigDecimal::new);
  }

  Duration duration(String field, Duration otherwise) {
    return has(field) ? duration(field) : otherwise;
  }

  Duration duration(String field) {
    return parse(field, "a duration such as PT4H", Duration::parse);
  }

  /** One of a few words. */
  <T> T choice(String field, Map<String, T> choices, T otherwise) {
    if (!has(field)) {
      return otherwise;
    }
    var word = text(field);
    var chosen = choices.get(word);
    if (chosen == null) {
      throw fault(field, "\"" + word + "\" is none of " + choices.keySet());
    }
    return chosen;
  }

  List<String> texts(String field) {
    return has(field) ? items(field).stream().map(this::scalar).toList() : List.of();
  }

  YamlMap map(String field) {
    return new YamlMap(file, required(field));
  }

  List<YamlMap> maps(String field) {
    var maps = new ArrayList<YamlMap>();
    for (var item : items(field)) {
      maps.add(new YamlMap(file, item));
    }
    return maps;
  }

  /** A fault at the line of a field, or of this mapping where it has no such field. */
  BrokenDefinitionException fault(String field, String fault) {
    var key = keys.get(field);
    return new BrokenDefinitionException(file, line(key == null ? node : key), fault);
  }

  /** A fault of this mapping as a whole. */
  BrokenDefinitionException fault(String fault) {
    return new BrokenDefinitionException(file, line(node), fault);
  }

  private List<Node> items(String field) {
    if (!(required(field) instanceof SequenceNode sequence)) {
      throw fault(field, field + " is a list");
    }
    return sequence.getValue();
  }

  private Node required(String field) {
    var value = fields.get(field);
    if (value == null) {
      throw fault(field + " is missing");
    }
    unread.remove(field);
    return value;
  }

  private <T> T parse(String field, String kind, Function<String, T> parser) {
    var text = text(field);
    try {
      return parser.apply(text);
    } catch (NumberFormatException | DateTimeException e) {
      throw fault(field, field + " is " + kind + ", not \"" + text + "\"");
    }
  }

  private String scalar(Node value) {
    if (!(value instanceof ScalarNode scalar)) {
      throw new BrokenDefinitionException(file, line(value), "one value is expected here");
    }
    return scalar.getValue();
  }

  private static int line(Node node) {
    return node.getStartMark().getLine() + 1;
  }
}
