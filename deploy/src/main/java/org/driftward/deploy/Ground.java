package org.driftward.deploy;

import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.deploy.embedded.DataFolder;
import org.driftward.deploy.embedded.EmbeddedBroker;
import org.driftward.deploy.embedded.EmbeddedDatabase;
import org.driftward.deploy.embedded.EmbeddedPart;
import org.driftward.deploy.embedded.EmbeddedParts;
import org.driftward.deploy.embedded.Secrets;
import org.driftward.deploy.embedded.StartException;
import org.driftward.deploy.embedded.Watched;
import org.jspecify.annotations.Nullable;

/**
 * What the application stands on: its data folder, and a broker and a database where none is
 * configured. The application finds them by system properties.
 */
final class Ground implements AutoCloseable {

  private static final String KAFKA = "kafka.bootstrap.servers";
  private static final String DATABASE = "quarkus.datasource.jdbc.url";
  private static final String SESSION_KEY = "quarkus.http.auth.session.encryption-key";

  private @Nullable DataFolder folder;
  private @Nullable EmbeddedPart parts;

  /**
   * @throws StartException if something cannot start; {@link #close()} then takes away the rest
   */
  void prepare() {
    var config = config();
    var settings = config.getConfigMapping(DeploySettings.class);
    folder = DataFolder.claim(settings.data());
    System.setProperty("driftward.data", folder.root().toString());
    try {
      var secrets = new Secrets(folder.root());
      parts = EmbeddedParts.start(missing(config, settings.embedded(), folder, secrets));
      parts.properties().forEach(System::setProperty);
      if (unset(config, SESSION_KEY)) {
        System.setProperty(SESSION_KEY, secrets.get("http.session"));
      }
    } catch (IOException e) {
      throw new StartException("The data folder cannot be written: " + e, e);
    }
  }

  @Override
  public void close() {
    try {
      Optional.ofNullable(parts).ifPresent(EmbeddedPart::close);
    } finally {
      Optional.ofNullable(folder).ifPresent(DataFolder::close);
    }
  }

  private static List<Supplier<EmbeddedPart>> missing(
      SmallRyeConfig config, DeploySettings.Embedded embedded, DataFolder folder, Secrets secrets)
      throws IOException {
    var starts = new ArrayList<Supplier<EmbeddedPart>>();
    if (unset(config, DATABASE)) {
      Path home = folder.folder("postgres");
      starts.add(
          () ->
              Watched.start(
                  "postgres",
                  port -> EmbeddedDatabase.start(home, port, secrets),
                  embedded.postgresPort()));
    }
    if (unset(config, KAFKA)) {
      Path home = folder.folder("kafka");
      var password = secrets.get("kafka.clients");
      var feeds = secrets.get("kafka.feeds");
      starts.add(
          () ->
              Watched.start(
                  "kafka",
                  port -> EmbeddedBroker.start(home, port, password, feeds),
                  embedded.kafkaPort()));
    }
    return starts;
  }

  private static boolean unset(SmallRyeConfig config, String property) {
    return config.getOptionalValue(property, String.class).isEmpty();
  }

  /** What can be known before Quarkus is there to ask. */
  private static SmallRyeConfig config() {
    return new SmallRyeConfigBuilder()
        .addDefaultInterceptors()
        .addDefaultSources()
        .withMapping(DeploySettings.class)
        .withMappingIgnore("driftward.**")
        .build();
  }
}
