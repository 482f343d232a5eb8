package org.driftward.scoring.config;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Settings of scoring. Every one has a default that suits a hospital of one machine. */
@StaticInitSafe
@ConfigMapping(prefix = "driftward.scoring")
public interface ScoringConfig {

  /** The hospital's policy file; the shipped one where none is given. */
  Optional<Path> policy();

  /** The hospital's own score definitions: files, or directories of them. */
  Optional<List<Path>> scores();

  /** Where the reports of re-scoring are kept while they are looked at. */
  @WithDefault("${driftward.data:data}/scoring-reports")
  Path reports();

  /** How the topology runs. */
  Streams streams();

  /** Kafka Streams. */
  interface Streams {

    /** Names the topology in Kafka: its consumer group, its transactions, its changelog. */
    @WithDefault("driftward-scoring")
    String applicationId();

    /** Where the state of the tasks is kept; it can be lost, and is then read back from Kafka. */
    @WithDefault("${driftward.data:data}/scoring")
    Path stateDir();

    /** Threads that process; more than there are partitions would idle. */
    @WithDefault("2")
    int threads();

    /** How often a transaction is committed: how long a snapshot may wait, at most. */
    @WithDefault("PT0.1S")
    Duration commitInterval();

    /** How many processes beside the active one keep a copy of each task's state. */
    @WithDefault("0")
    int standbyReplicas();

    /** Replicas of the changelog and of the topic of moves; -1 for what the broker says. */
    @WithDefault("-1")
    short replication();

    /**
     * How many encounters each task remembers the standing of, so that the next assessment does not
     * read its history. About 20 KiB of heap for each.
     */
    @WithDefault("2000")
    int rememberedEncounters();

    /** How many more it remembers in a packed form. About 3 KiB of heap for each. */
    @WithDefault("20000")
    int packedEncounters();

    /** Native memory of all state stores together, in MiB. */
    @WithDefault("64")
    int storeMemory();

    /** How long to wait before a thread that failed is replaced. */
    @WithDefault("PT1S")
    Duration restartAfter();
  }
}
