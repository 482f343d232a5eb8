package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The real database and the real broker, ended without a word. */
@Timeout(180)
class WatchedTest {

  private static final Duration SOON = Duration.ofSeconds(60);

  @TempDir Path folder;

  @Test
  void shouldStartAKilledDatabaseAgainWithItsRows() throws Exception {
    var secrets = new Secrets(folder);
    try (var database =
        Watched.start("postgres", port -> EmbeddedDatabase.start(folder, port, secrets), 0)) {
      var before = database.properties();
      try (var owner = asOwner(before)) {
        owner.createStatement().execute("CREATE TABLE public.kept AS SELECT 7 AS row");
      }

      kill(folder.resolve("cluster").resolve("postmaster.pid"));

      await()
          .atMost(SOON)
          .pollInterval(Duration.ofMillis(20))
          .until(() -> !Watched.conditions().get("postgres").well());
      await().atMost(SOON).until(() -> Watched.conditions().get("postgres").well());
      assertThat(database.properties()).isEqualTo(before);
      try (var owner = asOwner(before);
          var rows = owner.createStatement().executeQuery("SELECT row FROM public.kept")) {
        assertThat(rows.next()).isTrue();
        assertThat(rows.getInt(1)).isEqualTo(7);
      }
    }
    assertThat(Watched.conditions()).isEmpty();
  }

  @Test
  void shouldStartABrokerAgainThatHasEnded() throws Exception {
    var running = new AtomicReference<EmbeddedBroker>();
    try (var broker =
        Watched.start(
            "kafka",
            port -> {
              running.set(EmbeddedBroker.start(folder, port, "between-us"));
              return running.get();
            },
            0)) {
      var first = running.get();
      try (var admin = Admin.create(client(broker.properties()))) {
        admin.createTopics(List.of(new NewTopic("kept", 1, (short) 1))).all().get();
      }

      first.close();

      await().atMost(SOON).until(() -> running.get() != first);
      await().atMost(SOON).until(() -> Watched.conditions().get("kafka").well());
      try (var admin = Admin.create(client(broker.properties()))) {
        assertThat(admin.listTopics().names().get()).containsExactly("kept");
      }
    }
  }

  private static void kill(Path pidFile) throws Exception {
    var pid = Long.parseLong(Files.readAllLines(pidFile).get(0).strip());
    assertThat(ProcessHandle.of(pid).orElseThrow().destroyForcibly()).isTrue();
  }

  private static Map<String, Object> client(Map<String, String> properties) {
    var settings = new HashMap<String, Object>();
    properties.forEach((name, value) -> settings.put(name.substring("kafka.".length()), value));
    return settings;
  }

  private static Connection asOwner(Map<String, String> properties) throws SQLException {
    return DriverManager.getConnection(
        properties.get("quarkus.datasource.jdbc.url"),
        properties.get("quarkus.flyway.username"),
        properties.get("quarkus.flyway.password"));
  }
}
