package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Instances of alerts on one ground, under a policy with a ladder of seconds. */
final class Ladders {

  /** Of the ladder; the last waits for long. */
  static final int RUNGS = 3;

  private static final Path SHIPPED =
      Path.of("..", "alerts", "src", "main", "resources", "policy", "escalation.yaml");
  private static final String SECRET = "a-secret-of-at-least-32-characters";
  private static final String HIGH =
      """
          high:
            attend: PT30M
            reassess: PT30M
            quiet: PT1H
            rungs:
              - {audience: [response-team], channels: [board, mail, webhook], acknowledge: PT3S}
              - {audience: [response-team], channels: [board, mail, webhook], acknowledge: PT3S}
              - {audience: [response-team], channels: [board, mail, webhook], acknowledge: PT2H}
      """;
  private static final String TEAM =
      "recipients: [{audience: response-team, name: Team, mail: [team@ward.example],"
          + " webhook: [pagers]}]";

  private final Path folder;
  private final Map<String, String> environment;

  Ladders(Path folder, Outside outside, Pager pager, LetterBox letters) throws IOException {
    this.folder = folder;
    environment = outside.environment();
    environment.put("DRIFTWARD_ALERTS_POLICY", policy().toString());
    environment.put("DRIFTWARD_ALERTS_WEBHOOKS_PAGERS_URL", pager.url());
    environment.put("DRIFTWARD_ALERTS_WEBHOOKS_PAGERS_SECRET", SECRET);
    environment.put("QUARKUS_MAILER_FROM", "driftward@ward.example");
    environment.put("QUARKUS_MAILER_HOST", "127.0.0.1");
    environment.put("QUARKUS_MAILER_PORT", String.valueOf(letters.port()));
  }

  Two startTwo() {
    return new Two();
  }

  /** One more, which also knows who may read the journal. */
  RunningApp startReader() {
    return RunningApp.start(folder.resolve("reader"), playing("alerts,dashboard"));
  }

  private Map<String, String> playing(String roles) {
    var all = new HashMap<>(environment);
    all.put("DRIFTWARD_ROLES", roles);
    return all;
  }

  private Path policy() throws IOException {
    var shipped = Files.readString(SHIPPED);
    int high = shipped.indexOf("    high:\n      attend");
    int medium = shipped.indexOf("    medium:\n      attend");
    assertThat(high).as("the ladder of the shipped policy").isPositive().isLessThan(medium);
    var policy =
        (shipped.substring(0, high) + HIGH + shipped.substring(medium))
            .replace("detail: minimal", "detail: full")
            // Longer than a rung: a slow machine must not look like a receiver that is away.
            .replace("timeout: PT10S", "timeout: PT2M")
            .replace("recipients: []", TEAM);
    return Files.writeString(folder.resolve("policy.yaml"), policy);
  }

  /** Two that play alerts and nothing else. */
  final class Two implements AutoCloseable {
    private final List<RunningApp> instances = new ArrayList<>();

    private Two() {
      for (int which = 0; which < 2; which++) {
        instances.add(RunningApp.start(data(which), playing("alerts")));
      }
    }

    /** Without a word. */
    void kill(int which) {
      instances.get(which).kill();
    }

    /** Returns before it is ready. */
    void launch(int which) {
      instances.set(which, RunningApp.launch(data(which), playing("alerts")));
    }

    private Path data(int which) {
      return folder.resolve("alerts-" + which);
    }

    @Override
    public void close() {
      instances.forEach(RunningApp::close);
    }
  }
}
