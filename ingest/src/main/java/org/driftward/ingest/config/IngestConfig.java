package org.driftward.ingest.config;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.quarkus.runtime.configuration.MemorySize;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithConverter;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Optional;

/** Settings of intake. Every one has a default that suits a hospital of one machine. */
@StaticInitSafe
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

  /** The site's mapping of foreign codes, a YAML file; laid over the one that ships. */
  Optional<Path> codeMap();

  /** HL7 v2 over MLLP. */
  Mllp mllp();

  /** The listener, its bounds, and what a site settles for its feeds. */
  interface Mllp {

    /** The address it listens on; the protocol has neither login nor encryption of its own. */
    @WithDefault("127.0.0.1")
    String host();

    /** 0 takes any free port. */
    @WithDefault("2575")
    int port();

    /** How many senders may be connected at once; more are turned away. */
    @WithDefault("64")
    int maxConnections();

    /** The largest message; of a larger one, answered AR, only the beginning is kept. */
    @WithDefault("1M")
    MemorySize maxMessage();

    /** How long a connection may be silent between messages. */
    @WithDefault("PT30M")
    Duration idle();

    /** How long one message may take to come in, and one answer to be taken. */
    @WithDefault("PT30S")
    Duration patience();

    /** The time zone of times that name no offset; without it such times are refused. */
    Optional<@WithConverter(ZoneConverter.class) ZoneId> zone();

    /** The processing id (MSH-11) that is taken: P production, T training, D debugging. */
    @WithDefault("P")
    String processingId();

    /** The assigning authority (PID-3.4) whose patient numbers count; without it, the first. */
    Optional<String> patientAuthority();
  }

  /** How we deal with Kafka. */
  Kafka kafka();

  /** The door on Kafka. */
  Inbox inbox();

  /** How the inbox is read. */
  interface Inbox {

    /** How many records are judged and committed together at most. */
    @WithDefault("1000")
    int batch();

    /**
     * After this long the broker gives up what a process that died had begun; until then readers of
     * the same partitions wait.
     */
    @WithDefault("PT10S")
    Duration transactionTimeout();
  }

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
