package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Bundles that nobody here wrote: whole life records from an independent, general-purpose generator
 * of synthetic patients ({@code org.mitre.synthea}), made by {@code deploy/synthetic-population}
 * and sent as they are. Every value in them whose LOINC code the catalogue knows arrives, counted,
 * with the same value, unit and time.
 */
@WithRunningApp
@EnabledIfSystemProperty(
    named = SyntheticPopulationIT.FOLDER,
    matches = ".+",
    disabledReason = "deploy/synthetic-population makes the population and runs this")
class SyntheticPopulationIT {

  static final String FOLDER = "driftward.synthetic-population";

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, CatalogueEntry> KNOWN =
      Catalogue.shipped().entries().stream()
          .filter(entry -> entry.loinc() != null)
          .collect(Collectors.toMap(CatalogueEntry::loinc, Function.identity()));

  private final FhirFeed feed;

  SyntheticPopulationIT(RunningApp app) {
    this.feed = new FhirFeed(app);
  }

  @Test
  void shouldTakeEveryValueThatTheCatalogueKnows() throws IOException {
    int total = 0;
    for (var file : files()) {
      var body = Files.readAllBytes(file);
      var answer = feed.post("/fhir", FhirFeed.JSON, body);
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
      var sent = facts(JSON.readTree(body));
      for (var stay : sent.entrySet()) {
        await()
            .atMost(Duration.ofMinutes(2))
            .pollInterval(Duration.ofMillis(500))
            .untilAsserted(
                () ->
                    assertThat(feed.observations(stay.getKey()))
                        .flatExtracting(Fact::of)
                        .containsExactlyInAnyOrderElementsOf(stay.getValue()));
        total += stay.getValue().size();
      }
    }
    assertThat(total).as("values that arrived").isGreaterThan(200);
    System.out.println("Synthetic population: " + total + " values sent, each of them read back.");
  }

  private static List<Path> files() throws IOException {
    try (var paths = Files.list(Path.of(System.getProperty(FOLDER)))) {
      var files = paths.filter(path -> path.toString().endsWith(".json")).sorted().toList();
      assertThat(files).hasSizeGreaterThanOrEqualTo(3);
      return files;
    }
  }

  /** By stay, read from the bare JSON and by nothing of ours. */
  private static Map<String, List<Fact>> facts(JsonNode bundle) {
    var facts = new HashMap<String, List<Fact>>();
    for (var entry : bundle.get("entry")) {
      var resource = entry.get("resource");
      if (!resource.get("resourceType").asText().equals("Observation")) {
        continue;
      }
      var stay = resource.at("/encounter/reference").asText().replace("urn:uuid:", "");
      var at = OffsetDateTime.parse(resource.get("effectiveDateTime").asText()).toInstant();
      measured(resource)
          .map(node -> fact(node, at.toString()))
          .forEach(fact -> facts.computeIfAbsent(stay, key -> new ArrayList<>()).add(fact));
    }
    return facts;
  }

  private static Stream<JsonNode> measured(JsonNode observation) {
    var parts = new ArrayList<>(List.of(observation));
    if (observation.has("component")) {
      observation.get("component").forEach(parts::add);
    }
    return parts.stream()
        .filter(node -> node.has("valueQuantity"))
        .filter(node -> KNOWN.containsKey(node.at("/code/coding/0/code").asText()));
  }

  private static Fact fact(JsonNode node, String at) {
    var entry = KNOWN.get(node.at("/code/coding/0/code").asText());
    var unit = entry.unit() == null ? "" : node.at("/valueQuantity/code").asText();
    var value = Fact.plain(node.at("/valueQuantity/value").decimalValue());
    return new Fact(entry.code(), "", "", value, unit, at);
  }
}
