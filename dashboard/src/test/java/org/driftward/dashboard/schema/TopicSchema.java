package org.driftward.dashboard.schema;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.contract.Word;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * The JSON Schema (2020-12) of one topic's record, from its type and its documentation, so that
 * neither can drift from the code. Readers ignore fields that they do not know, so more are
 * allowed.
 */
final class TopicSchema {

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final Set<Class<?>> NUMBERS = Set.of(BigDecimal.class, double.class, Double.class);
  private static final Set<Class<?>> WHOLES =
      Set.of(int.class, long.class, Integer.class, Long.class);

  private final Map<String, ObjectNode> definitions = new TreeMap<>();

  private TopicSchema() {}

  static JsonNode of(Topic topic, Class<? extends Record> type) {
    var schema = new TopicSchema();
    var root = JSON.objectNode();
    root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    root.put("$id", "urn:driftward:schema:" + topic.topic());
    root.put("title", "A record of " + topic.topic());
    root.setAll(schema.object(type));
    if (!schema.definitions.isEmpty()) {
      schema.definitions.forEach(root.putObject("$defs")::set);
    }
    return root;
  }

  private ObjectNode object(Class<?> type) {
    var docs = new Docs(type);
    var node = JSON.objectNode();
    node.put("type", "object");
    docs.summary().ifPresent(text -> node.put("description", text));
    var required = JSON.arrayNode();
    var properties = node.putObject("properties");
    for (var component : type.getRecordComponents()) {
      var property = property(component);
      docs.of(component.getName()).ifPresent(text -> property.put("description", text));
      properties.set(component.getName(), property);
      if (!component.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
        required.add(component.getName());
      }
    }
    for (var method : type.getDeclaredMethods()) {
      // A question that a record answers is written beside its components.
      if (method.getReturnType() == boolean.class && method.getName().matches("is[A-Z]\\w*")) {
        var name = method.getName().substring(2).toLowerCase(Locale.ROOT);
        properties
            .putObject(name)
            .put("type", "boolean")
            .put("description", "Follows from the rest.");
      }
    }
    node.set("required", required);
    return node;
  }

  private ObjectNode property(RecordComponent component) {
    return node(component.getType(), component.getAnnotatedType());
  }

  private ObjectNode node(Class<?> type, AnnotatedType annotated) {
    var node = JSON.objectNode();
    if (type == String.class) {
      return node.put("type", "string");
    }
    if (type == boolean.class) {
      return node.put("type", "boolean");
    }
    if (NUMBERS.contains(type)) {
      return node.put("type", "number");
    }
    if (WHOLES.contains(type)) {
      return node.put("type", "integer");
    }
    if (type == Instant.class || type == LocalDate.class || type == Duration.class) {
      var format =
          type == Instant.class ? "date-time" : type == LocalDate.class ? "date" : "duration";
      return node.put("type", "string").put("format", format);
    }
    if (type == Scalar.class) {
      node.putArray("type").add("number").add("string");
      return node;
    }
    if (type.isEnum()) {
      node.put("type", "string");
      var words = node.putArray("enum");
      for (var constant : type.getEnumConstants()) {
        words.add(((Word) constant).word());
      }
      return node;
    }
    if (List.class.isAssignableFrom(type)) {
      var element = ((AnnotatedParameterizedType) annotated).getAnnotatedActualTypeArguments()[0];
      node.put("type", "array");
      node.set("items", node((Class<?>) element.getType(), element));
      return node;
    }
    return reference(type);
  }

  private ObjectNode reference(Class<?> type) {
    var name = type.getSimpleName();
    if (!definitions.containsKey(name)) {
      definitions.put(name, JSON.objectNode());
      definitions.put(name, type == Finding.class ? finding() : object(type));
    }
    return JSON.objectNode().put("$ref", "#/$defs/" + name);
  }

  /** One flat object; {@code FindingJson} writes it by hand. */
  private static ObjectNode finding() {
    var node = JSON.objectNode();
    node.put("type", "object");
    node.put("description", "One measured or observed thing, with exactly one kind of value.");
    var properties = node.putObject("properties");
    text(properties, "code", "A code of the catalogue.");
    text(properties, "site", "Where on the body, if the catalogue lists sites for the code.");
    text(properties, "side", "Left or right, if it has sides.")
        .putArray("enum")
        .add("left")
        .add("right");
    properties.putObject("value").put("type", "number").put("description", "A quantity.");
    text(properties, "unit", "Of the value: a UCUM code (" + CodeSystem.UCUM + ").");
    properties
        .putObject("grade")
        .put("type", "integer")
        .put("description", "A step of the scale that the catalogue names.");
    text(properties, "coded", "One of the options that the catalogue lists.");
    text(properties, "text", "Free words.");
    node.putArray("required").add("code");
    node.putObject("dependentRequired").putArray("value").add("unit");
    var kinds = node.putArray("oneOf");
    List.of("value", "grade", "coded", "text")
        .forEach(kind -> kinds.addObject().putArray("required").add(kind));
    return node;
  }

  private static ObjectNode text(ObjectNode properties, String name, String description) {
    return properties.putObject(name).put("type", "string").put("description", description);
  }
}
