package org.driftward.ingest.narrative;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Narrative.Heard;
import org.driftward.ingest.contract.NarrativeReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Short texts in many voices with what a careful nurse would accept as said. Texts and expectations
 * are our own: common practice, no source; conversions by the definitions of pound, inch and
 * degree.
 */
class NarrativeGoldenTest {

  private static Stream<String> texts() {
    try (var in = NarrativeGoldenTest.class.getResourceAsStream("/narrative/goldens.txt")) {
      var lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines();
      return lines.filter(line -> line.contains("=>")).toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("texts")
  void shouldHearWhatWasSaidAndNothingElse(String line) {
    var parts = line.split("=>", -1);
    var expected =
        Arrays.stream(parts[1].split(";")).map(String::trim).filter(s -> !s.isEmpty()).toList();

    var heard = NarrativeReader.shipped().read(parts[0].trim());

    assertThat(written(heard.findings())).containsExactlyInAnyOrderElementsOf(expected);
  }

  private static List<String> written(List<Heard> findings) {
    return findings.stream().map(Heard::finding).map(NarrativeGoldenTest::written).toList();
  }

  static String written(Finding finding) {
    var key = finding.key();
    var where =
        Stream.of(key.site(), key.side() == null ? null : key.side().word())
            .filter(part -> part != null)
            .map(part -> "/" + part)
            .collect(Collectors.joining());
    return key.code() + where + " " + finding.value().plain();
  }
}
