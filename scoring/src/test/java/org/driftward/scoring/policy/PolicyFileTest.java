package org.driftward.scoring.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.change.ChangeDetector;
import org.driftward.scoring.core.policy.Restart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PolicyFileTest {

  @TempDir Path directory;

  @Test
  void shouldShipAPolicy() {
    var policy = PolicyFile.shipped();

    assertThat(policy.version()).isEqualTo("shipped-1");
    assertThat(policy.validity("heart-rate")).isEqualTo(Duration.ofHours(6));
    assertThat(policy.validity("body-weight")).isEqualTo(Duration.ofDays(30));
    assertThat(policy.restarts())
        .containsExactlyInAnyOrder(Restart.TRANSFER, Restart.OXYGEN_SCALE, Restart.NEW_BASELINE);
    assertThat(policy.rates()).extracting(rate -> rate.code()).containsExactly("urine-rate");
  }

  /** Every code that the shipped policy names is one of the shipped catalogue. */
  @Test
  void shouldShipAPolicyThatTheCatalogueKnows() {
    var policy = PolicyFile.shipped();
    var catalogue = Catalogue.shipped();

    new ChangeDetector(catalogue, policy);

    assertThat(policy.validity().of().keySet()).allMatch(code -> catalogue.find(code).isPresent());
    assertThat(policy.observations().core())
        .allMatch(core -> catalogue.find(core.code()).isPresent())
        .allSatisfy(
            core -> assertThat(core.or()).allMatch(code -> catalogue.find(code).isPresent()));
  }

  @Test
  void shouldReadAHospitalsOwnFile() throws IOException {
    var policy = PolicyFile.read(file(shipped().replace("limit: 3.5\n", "limit: 2.5\n")));

    assertThat(policy.drift().limit()).isEqualTo(2.5);
    assertThat(policy.quiet()).isEqualTo(PolicyFile.shipped().quiet());
  }

  @Test
  void shouldLeaveOtherSectionsToOthers() throws IOException {
    var policy =
        PolicyFile.read(file(shipped() + "\nescalation:\n  ladder: [anything, at, all]\n"));

    assertThat(policy).isEqualTo(PolicyFile.shipped());
  }

  @Test
  void shouldKeepTheShippedRulesUnderTheHospitalsVersion() throws IOException {
    var policy = PolicyFile.read(file("version: ours-7\nescalation: {}\n"));

    assertThat(policy.version()).isEqualTo("ours-7");
    assertThat(policy).isEqualTo(PolicyFile.shipped().withVersion("ours-7"));
  }

  /** The least and the most that a setting may be is no fault. */
  @ParameterizedTest
  @CsvSource({
    "minimum: 5 maximum, minimum: 3 maximum",
    "maximum: 12, maximum: 30",
    "maximum: 12, maximum: 5",
    "points: 16, points: 48",
    "points: 16, points: 5",
    "mention: 0.1, mention: 1",
    "mention: 0.1, mention: 0.01",
    "minimum: 4, minimum: 6",
    "minimum: 4, minimum: 1"
  })
  void shouldTakeASettingAtItsEdge(String good, String edge) throws IOException {
    var shipped = shipped();
    var from = good.replace(" maximum", "\n    maximum");
    assertThat(shipped).containsOnlyOnce(from);

    var policy = PolicyFile.read(file(shipped.replace(from, edge.replace(" max", "\n    max"))));

    assertThat(policy).isNotEqualTo(PolicyFile.shipped());
  }

  static Stream<Arguments> faults() {
    return Stream.of(
        arguments("version: shipped-1", "unversioned: 1", "a policy needs a version"),
        arguments("spacing: PT15M", "", "spacing"),
        arguments("spacing: PT15M", "spacing: -PT1M", "spacing PT-1M is negative"),
        arguments("minimum: 5\n    maximum", "minimum: 2\n    maximum", "quiet minimum 2"),
        arguments("maximum: 12", "maximum: 31", "quiet maximum 31"),
        arguments("maximum: 12", "maximum: 4", "quiet maximum 4"),
        arguments("span: PT24H", "span: PT0S", "quiet span PT0S"),
        arguments("limit: 3.5\n", "limit: 0.5\n", "drift limit 0.5 does not exceed"),
        arguments("decision: 5", "decision: -5", "drift decision -5.0"),
        arguments("allowance: 1", "allowance: 0", "drift allowance 0.0"),
        arguments("decision: 5", "decision: .inf", "Malformed numeric value"),
        arguments("decision: 5", "decisoin: 5", "decision"),
        arguments("decision: 5", "decision: 5\n    more: 1", "more"),
        arguments("points: 16", "points: 49", "trend points 49"),
        arguments("minimum: 5\n    level", "minimum: 4\n    level", "trend minimum 4"),
        arguments("level: 0.01", "level: 0.2", "trend level 0.2 and mention 0.1"),
        arguments("mention: 0.1", "mention: 1.1", "mention 1.1"),
        arguments("PT24H\n    points", "tomorrow\n    points", "tomorrow"),
        arguments("minimum: 2", "minimum: 0", "level minimum 0"),
        arguments("[transfer, oxygen-scale, new-baseline]", "[transfer, moonrise]", "moonrise"),
        arguments("restarts: [transfer, oxygen-scale, new-baseline]", "", "restarts"),
        arguments("minimum: 4", "minimum: 7", "observations minimum 7"),
        arguments("settle: PT1H", "settle: PT0S", "observations settle"),
        arguments("{total: 7, interval", "{interval", "by total, by single or by risk"),
        arguments("{total: 7, int", "{total: 7, single: 3, int", "by total, by single or by risk"),
        arguments("change: 25", "change: much", "much"),
        arguments("otherwise: PT6H", "otherwise: PT6H\n    otherwise: PT7H", "otherwise"),
        arguments("body-weight: P30D", "body-weight: PT-1S", "validity of body-weight"));
  }

  /** A broken file is refused where it is broken; the message names the file and the setting. */
  @ParameterizedTest
  @MethodSource("faults")
  void shouldRefuseABrokenFile(String good, String bad, String fault) throws IOException {
    assertThat(shipped()).containsOnlyOnce(good);
    var path = file(shipped().replace(good, bad));

    assertThatThrownBy(() -> PolicyFile.read(path))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining(path.toString())
        .hasMessageContaining(fault);
  }

  @Test
  void shouldNameTheLineOfAFault() throws IOException {
    var path = file(shipped().replace("decision: 5", "decision: five"));

    assertThatThrownBy(() -> PolicyFile.read(path)).hasMessageMatching("(?s).*line: \\d+.*");
  }

  @Test
  void shouldSayThatAFileIsNotThere() {
    assertThatThrownBy(() -> PolicyFile.read(directory.resolve("none.yaml")))
        .isInstanceOf(UncheckedIOException.class);
  }

  private Path file(String content) throws IOException {
    return Files.writeString(directory.resolve("policy.yaml"), content);
  }

  private static String shipped() throws IOException {
    try (var in = PolicyFile.class.getResourceAsStream("/policy/scoring.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** A file, or an edition kept from before, that has no floor of its own. */
  @Test
  void shouldNotLeaveAnOlderSectionWithoutAFloor() throws IOException {
    String text;
    try (var in = PolicyFile.class.getResourceAsStream("/policy/scoring.yaml")) {
      text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    var older = text.substring(0, text.indexOf("  # Life-threatening values"));

    var policy = PolicyFile.read("older.yaml", older, PolicyFile.shipped());

    assertThat(policy.urgent()).isEqualTo(PolicyFile.shipped().urgent());
  }
}
