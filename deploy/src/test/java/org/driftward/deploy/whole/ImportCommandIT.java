package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code import FILE} of the jar, against a server that runs. */
@WithRunningApp
class ImportCommandIT {

  private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");

  private final RunningApp app;
  @TempDir Path folder;

  ImportCommandIT(RunningApp app) {
    this.app = app;
  }

  @Test
  void shouldBringAFileInOnceAndNameTheBrokenRowByItsLine() throws Exception {
    var ward = Ward.open(app, "sorrel");
    ward.admit("V-4101", "1", "Saltmarsh, Ida");
    var file = Files.writeString(folder.resolve("night.csv"), file("V-4101"));

    var first = run(file);
    var again = run(file);

    assertThat(first.output)
        .contains("3 rows read, 2 accepted, 1 refused", "line 3: heart-rate [/min]: 999 lies");
    assertThat(first.exit).isEqualTo(1);
    assertThat(again.output).contains("3 rows read, 2 accepted, 1 refused");
    assertThat(ward.history("V-4101").get("assessments")).hasSize(2);
  }

  @Test
  void shouldSayWhatIsWrongWithAHeader() throws Exception {
    var file = Files.writeString(folder.resolve("foreign.csv"), "Case,Pulse\n1,80\n");

    var told = run(file);

    assertThat(told.output).contains("neither a field nor a finding");
    assertThat(told.exit).isEqualTo(1);
  }

  private static String file(String encounter) {
    var takenAt = Instant.now().minusSeconds(1800);
    var rows = new StringBuilder("encounter,patient,takenAt,heart-rate [/min]\n");
    for (int rate : new int[] {80, 999, 82}) {
      rows.append(
          "%s,P-%s,%s,%d%n".formatted(encounter, encounter, takenAt.plusSeconds(rate), rate));
    }
    return rows.toString();
  }

  private record Told(int exit, String output) {}

  private Told run(Path file) throws IOException, InterruptedException {
    var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    var builder =
        new ProcessBuilder(
                java, "-XX:TieredStopAtLevel=1", "-jar", JAR.toString(), "import", file.toString())
            .redirectErrorStream(true);
    builder.environment().put("DRIFTWARD_SERVER", app.address().toString());
    builder.environment().put("DRIFTWARD_PASSWORD", RunningApp.ADMIN_PASSWORD);
    var process = builder.start();
    var output = new String(process.getInputStream().readAllBytes(), Charset.defaultCharset());
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return new Told(process.exitValue(), output);
  }
}
