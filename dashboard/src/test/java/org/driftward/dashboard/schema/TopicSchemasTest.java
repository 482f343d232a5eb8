package org.driftward.dashboard.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The schemas in {@code docs/schemas} are those of the records, records as our own format writes
 * them satisfy them by an independent validator, and the AsyncAPI document names every topic. To
 * write them anew: {@code -Ddriftward.write-docs=true}.
 */
class TopicSchemasTest {

  private static final Path DOCS = Path.of("..", "docs");
  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * @param samples records that together use every field
   */
  record Contract<T extends Record>(Topic topic, Class<T> type, List<T> samples) {

    Path file() {
      return DOCS.resolve("schemas").resolve(topic.topic() + ".json");
    }

    List<JsonNode> written() {
      return samples.stream().map(JsonFormat.of(type)::write).map(Contract::parse).toList();
    }

    private static JsonNode parse(byte[] json) {
      try {
        return JSON.readTree(json);
      } catch (IOException e) {
        throw new AssertionError(e);
      }
    }

    @Override
    public String toString() {
      return topic.topic();
    }
  }

  static Stream<Contract<?>> contracts() {
    return Stream.of(
        new Contract<>(Topic.ASSESSMENTS, Assessment.class, SchemaSamples.ASSESSMENTS),
        new Contract<>(Topic.ENCOUNTERS, Encounter.class, SchemaSamples.ENCOUNTERS),
        new Contract<>(Topic.CARE_PLANS, CarePlan.class, SchemaSamples.PLANS),
        new Contract<>(Topic.SNAPSHOTS, Snapshot.class, SchemaSamples.SNAPSHOTS),
        new Contract<>(Topic.EPISODES, EpisodeChange.class, SchemaSamples.CHANGES),
        new Contract<>(Topic.REJECTED, Rejection.class, SchemaSamples.REJECTIONS));
  }

  @Test
  void shouldHaveASchemaForEveryTopic() {
    assertThat(Stream.concat(contracts().map(Contract::topic), Stream.of(Topic.INBOX)))
        .as("that of the inbox, which no record of ours describes, is in InboxSchemaTest")
        .containsExactlyInAnyOrder(Topic.values());
  }

  @ParameterizedTest
  @MethodSource("contracts")
  void shouldBeTheSchemaOfTheRecord(Contract<?> contract) throws IOException {
    var schema = pretty(TopicSchema.of(contract.topic(), contract.type()));
    if (Boolean.getBoolean("driftward.write-docs")) {
      Files.writeString(contract.file(), schema);
    }
    assertThat(contract.file()).hasContent(schema);
  }

  @ParameterizedTest
  @MethodSource("contracts")
  void shouldHoldForWhatIsSent(Contract<?> contract) throws IOException {
    var schema = validator(contract);

    assertThat(contract.written())
        .allSatisfy(record -> assertThat(validate(schema, record)).isEmpty());
  }

  @ParameterizedTest
  @MethodSource("contracts")
  void shouldNotHoldForARecordThatLacksAFieldOrHasAnotherType(Contract<?> contract)
      throws IOException {
    var schema = validator(contract);
    var whole = contract.written().get(0);
    for (var required : JSON.readTree(contract.file().toFile()).get("required")) {
      var less = whole.<ObjectNode>deepCopy();
      less.remove(required.asText());
      assertThat(validate(schema, less)).as("without %s", required.asText()).isNotEmpty();
      var other = whole.<ObjectNode>deepCopy();
      other.putObject(required.asText()).put("is", "something else");
      assertThat(validate(schema, other)).as("another %s", required.asText()).isNotEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("contracts")
  void shouldNameTheFieldsThatAreSentAndNoOthers(Contract<?> contract) throws IOException {
    var root = JSON.readTree(contract.file().toFile());
    var named = new TreeSet<String>();
    named(root, root, "", named);
    var sent = new TreeSet<String>();
    contract.written().forEach(record -> sent(record, "", sent));

    assertThat(named).isEqualTo(sent);
  }

  @Test
  void shouldNameEveryTopicAndItsSchemaInTheAsyncApi() throws IOException {
    var document = new YAMLMapper().readTree(DOCS.resolve("asyncapi.yaml").toFile());
    var addresses = new ArrayList<String>();
    document.get("channels").forEach(channel -> addresses.add(channel.get("address").asText()));
    var schemas = new ArrayList<String>();
    document
        .at("/components/messages")
        .forEach(message -> schemas.add(message.at("/payload/schema/$ref").asText()));
    // Of the inbox's four messages two follow standards of their own, and two share our schema.
    schemas.removeIf(
        reference -> reference.isEmpty() || reference.equals(InboxSchemaTest.REFERENCE));

    assertThat(document.get("asyncapi").asText()).isEqualTo("3.0.0");
    assertThat(addresses)
        .containsExactlyInAnyOrderElementsOf(Stream.of(Topic.values()).map(Topic::topic).toList());
    assertThat(schemas)
        .containsExactlyInAnyOrderElementsOf(
            contracts().map(it -> "schemas/" + it.file().getFileName()).toList());
    assertThat(references(document, new ArrayList<>()))
        .filteredOn(reference -> reference.startsWith("#/"))
        .isNotEmpty()
        .allSatisfy(
            reference ->
                assertThat(document.at(reference.substring(1)).isMissingNode())
                    .as(reference)
                    .isFalse());
  }

  private static List<String> references(JsonNode node, List<String> found) {
    if (node.has("$ref")) {
      found.add(node.get("$ref").asText());
    }
    node.forEach(child -> references(child, found));
    return found;
  }

  private static JsonSchema validator(Contract<?> contract) throws IOException {
    return JsonSchemaFactory.getInstance(VersionFlag.V202012)
        .getSchema(Files.readString(contract.file()));
  }

  private static Set<ValidationMessage> validate(JsonSchema schema, JsonNode record) {
    return schema.validate(
        record, context -> context.getExecutionConfig().setFormatAssertionsEnabled(true));
  }

  /** Every field below {@code node} of the schema, as its path without places in arrays. */
  private static void named(JsonNode root, JsonNode node, String path, Set<String> into) {
    if (node.has("$ref")) {
      named(root, root.at(node.get("$ref").asText().substring(1)), path, into);
    } else if (node.has("items")) {
      named(root, node.get("items"), path, into);
    } else if (node.has("properties")) {
      node.get("properties")
          .properties()
          .forEach(
              field -> {
                into.add(path + "/" + field.getKey());
                named(root, field.getValue(), path + "/" + field.getKey(), into);
              });
    }
  }

  private static void sent(JsonNode node, String path, Set<String> into) {
    if (node.isArray()) {
      node.forEach(element -> sent(element, path, into));
    }
    node.properties()
        .forEach(
            field -> {
              into.add(path + "/" + field.getKey());
              sent(field.getValue(), path + "/" + field.getKey(), into);
            });
  }

  private static String pretty(JsonNode node) throws IOException {
    var printer = new DefaultPrettyPrinter();
    var indent = new DefaultIndenter("  ", "\n");
    printer.indentObjectsWith(indent);
    printer.indentArraysWith(indent);
    return JSON.writer(printer).writeValueAsString(node) + "\n";
  }
}
