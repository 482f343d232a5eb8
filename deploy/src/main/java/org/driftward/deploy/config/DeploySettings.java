package org.driftward.deploy.config;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.Role;

/** Which parts this process plays, where it keeps its data, and how it treats the topics. */
@StaticInitSafe
@ConfigMapping(prefix = "driftward")
public interface DeploySettings {

  /** The roles this process plays; what it does not play does not start, listen or consume. */
  @WithDefault("ingest,scoring,alerts,dashboard")
  Set<Role> roles();

  /** Folder of everything this process must find again; one process at a time. */
  @WithDefault("data")
  Path data();

  /** Password of the first account, {@code admin}; without it a random one, printed once. */
  Optional<String> adminPassword();

  Embedded embedded();

  Topics topics();

  Demo demo();

  /** Where the embedded broker and database listen, on loopback. */
  interface Embedded {
    /** Port of the broker; 0 for any free one. */
    @WithDefault("0")
    int kafkaPort();

    /** Port of the database; 0 for any free one. */
    @WithDefault("0")
    int postgresPort();
  }

  /** How topics are made when they do not exist. An existing topic is left as it is. */
  interface Topics {
    /** Partitions of every topic; the upper bound of how many processes share the work. */
    @WithDefault("6")
    int partitions();

    @WithDefault("1")
    short replication();

    /** How long snapshots stay on Kafka; without it for ever. Assessments always stay. */
    Optional<Duration> snapshotRetention();
  }

  /** The invented wards. */
  interface Demo {
    @WithDefault("false")
    boolean enabled();

    /** Seconds of ward time in one second of wall-clock time: a quarter of an hour in 45 s. */
    @WithDefault("20")
    double clockRate();
  }
}
