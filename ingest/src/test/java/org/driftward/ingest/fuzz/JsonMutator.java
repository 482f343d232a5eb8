package org.driftward.ingest.fuzz;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Breaks JSON where its structure is: a field gone, doubled under another name, of another type,
 * swapped with a field elsewhere; an element gone or repeated; now and then single bytes.
 */
public final class JsonMutator {

  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

  private final List<JsonNode> wholes;

  /**
   * @param wholes well-formed inputs to start from
   */
  public JsonMutator(List<String> wholes) {
    this.wholes = wholes.stream().map(JsonMutator::parse).toList();
  }

  public byte[] next(Random random) {
    var node = wholes.get(random.nextInt(wholes.size())).deepCopy();
    int mutations = 1 + random.nextInt(3);
    for (int i = 0; i < mutations; i++) {
      mutate(node, random);
    }
    var bytes = write(node);
    return random.nextInt(8) == 0 ? Bytes.broken(bytes, random) : bytes;
  }

  private void mutate(JsonNode root, Random random) {
    var containers = new ArrayList<JsonNode>();
    collect(root, containers);
    var target = containers.get(random.nextInt(containers.size()));
    if (target instanceof ObjectNode object && !object.isEmpty()) {
      var names = new ArrayList<String>();
      object.fieldNames().forEachRemaining(names::add);
      var name = names.get(random.nextInt(names.size()));
      switch (random.nextInt(5)) {
        case 0 -> object.remove(name);
        case 1 -> object.set(names.get(random.nextInt(names.size())), object.get(name).deepCopy());
        case 2 -> object.set(Odd.text(random), object.get(name).deepCopy());
        case 3 -> object.set(name, elsewhere(random));
        default -> object.set(name, Odd.value(random));
      }
    } else if (target instanceof ArrayNode array) {
      int at = array.isEmpty() ? 0 : random.nextInt(array.size());
      switch (random.nextInt(4)) {
        case 0 -> array.remove(at);
        case 1 -> array.insert(at, array.isEmpty() ? Odd.value(random) : array.get(at).deepCopy());
        case 2 -> array.insert(at, elsewhere(random));
        default -> array.insert(at, Odd.value(random));
      }
    }
  }

  /** Something well-formed from another place. */
  private JsonNode elsewhere(Random random) {
    var containers = new ArrayList<JsonNode>();
    collect(wholes.get(random.nextInt(wholes.size())), containers);
    return containers.get(random.nextInt(containers.size())).deepCopy();
  }

  private static void collect(JsonNode node, List<JsonNode> containers) {
    if (node.isContainerNode()) {
      containers.add(node);
      node.forEach(child -> collect(child, containers));
    }
  }

  private static JsonNode parse(String json) {
    try {
      return JSON.readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static byte[] write(JsonNode node) {
    try {
      return JSON.writeValueAsString(node).getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }
}
