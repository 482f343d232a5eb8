package org.driftward.ingest.config;

import io.quarkus.runtime.configuration.MemorySize;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** Settings of intake. Every one has a default that suits a hospital of one machine. */
@ConfigMapping(prefix = "driftward.ingest")
public interface IngestConfig {

  /** How far a sender's clock may run ahead of ours before its times are refused. */
  @WithDefault("PT5M")
  Duration clockSkew();

  /** How long before admission findings may have been taken, for example in the emergency room. */
  @WithDefault("PT24H")
  Duration beforeAdmission();

  /** The largest body of one request; a larger one is answered 413. */
  @WithDefault("4M")
  MemorySize maxBody();

  /** How many assessments one request may hold. */
  @WithDefault("1000")
  int maxAssessments();

  /** What a sender is told to wait, in {@code Retry-After}, while Kafka is away. */
  @WithDefault("PT5S")
  Duration retryAfter();

  /** The site's mapping of foreign codes, a YAML file; without it, the one that ships. */
  Optional<Path> codeMap();

  /** How we deal with Kafka. */
  Kafka kafka();

  /** How we deal with uploaded files. */
  Imports imports();

  /** Bounds on files of assessments. */
  interface Imports {

    /** The largest part of one call; a larger file comes in several. */
    @WithDefault("8M")
    MemorySize part();

    /** The largest file. It waits in the database until its rows are dealt with. */
    @WithDefault("4G")
    MemorySize largest();
  }

  /** Bounds on waiting and memory while Kafka is slow or away. */
  interface Kafka {

    /** How long a request may wait for a place in the send buffer or for the cluster's layout. */
    @WithDefault("PT2S")
    Duration maxBlock();

    /** How long a record may wait for its acknowledgement, retries included. */
    @WithDefault("PT10S")
    Duration deliveryTimeout();

    /** How long a record may wait for others to share its batch; grows throughput, not memory. */
    @WithDefault("PT0.002S")
    Duration linger();

    /** Memory for records that are not acknowledged yet. */
    @WithDefault("32M")
    MemorySize buffer();

    /** How long a question about an unknown encounter waits to catch up with the topic's end. */
    @WithDefault("PT3S")
    Duration catchUp();
  }
}
