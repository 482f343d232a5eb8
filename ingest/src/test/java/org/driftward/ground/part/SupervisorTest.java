package org.driftward.ground.part;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A real virtual machine whose memory runs out in one worker while another thread lives on. */
@Timeout(120)
class SupervisorTest {

  /** Fills the heap in a worker. The main thread would keep the process alive for ever. */
  public static void main(String[] arguments) throws InterruptedException {
    var kept = new ArrayList<long[]>();
    new Worker(
            "hungry",
            () -> {
              while (true) {
                kept.add(new long[1 << 20]);
              }
            })
        .start();
    TimeUnit.HOURS.sleep(kept.size() + 1L);
  }

  @Test
  void shouldEndAProcessWhoseMemoryIsAtItsEnd() throws IOException, InterruptedException {
    var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    var process =
        new ProcessBuilder(
                List.of(
                    java,
                    "-Xmx48m",
                    "-cp",
                    System.getProperty("java.class.path"),
                    SupervisorTest.class.getName()))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      assertThat(process.waitFor(Duration.ofMinutes(1).toSeconds(), TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isEqualTo(Supervisor.ENDED);
    } finally {
      process.destroyForcibly();
    }
  }
}
