package org.driftward.dashboard.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The schema of what others send, by an independent validator. That intake keeps the same examples
 * is shown in ingest.
 */
class InboxSchemaTest {

  static final String REFERENCE = "schemas/driftward.inbox.json";

  private static final Path DOCS = Path.of("..", "docs");

  @Test
  void shouldHoldForTheExamples() throws IOException {
    assertThat(examples()).hasSize(3).allSatisfy(example -> assertThat(faults(example)).isZero());
  }

  @Test
  void shouldHoldForSeveralAssessmentsAtOnceAndNotForNone() throws IOException {
    var array = new YAMLMapper().createArrayNode();
    assertThat(faults(array)).isPositive();
    array.add(examples().get(0)).add(examples().get(1));
    assertThat(faults(array)).isZero();
  }

  @Test
  void shouldNotHoldForAnExampleThatLacksAFieldOrHasTwoValues() throws IOException {
    for (var field : List.of("id", "encounter", "patient", "takenAt")) {
      var less = examples().get(0).<ObjectNode>deepCopy();
      less.remove(field);
      assertThat(faults(less)).as("without %s", field).isPositive();
    }
    var two = examples().get(0).deepCopy();
    ((ObjectNode) two.at("/findings/0")).put("coded", "alert");
    assertThat(faults(two)).isPositive();
    var none = examples().get(0).deepCopy();
    ((ObjectNode) none.at("/findings/0")).remove("unit");
    assertThat(faults(none)).isPositive();
  }

  private static int faults(JsonNode example) throws IOException {
    JsonSchema schema =
        JsonSchemaFactory.getInstance(VersionFlag.V202012)
            .getSchema(Files.readString(DOCS.resolve(REFERENCE)));
    return schema
        .validate(example, context -> context.getExecutionConfig().setFormatAssertionsEnabled(true))
        .size();
  }

  private static List<JsonNode> examples() throws IOException {
    var document = new YAMLMapper().readTree(DOCS.resolve("asyncapi.yaml").toFile());
    var found = new ArrayList<JsonNode>();
    for (var message : List.of("inbox-assessment", "inbox-encounter")) {
      document
          .at("/components/messages/" + message + "/examples")
          .forEach(example -> found.add(example.get("payload")));
    }
    return found;
  }
}
