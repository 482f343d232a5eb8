package org.driftward.alerts.config;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/** Settings of alerts. Every one has a default that suits a hospital of one machine. */
@StaticInitSafe
@ConfigMapping(prefix = "driftward.alerts")
public interface AlertsConfig {

  /** A YAML file whose {@code escalation} section replaces the shipped one. */
  Optional<Path> policy();

  /**
   * The hospital's time zone, for times of day in words; the machine's unless given. Text, because
   * an absent value of a type without an empty word fails the start.
   */
  Optional<String> zone();

  /** How often to look for clocks that have run out. */
  @WithDefault("PT1S")
  Duration look();

  /** How many clocks to take in one transaction. */
  @WithDefault("50")
  int deadlines();

  /** How often to look for changes that another process wrote and nobody has sent. */
  @WithDefault("PT0.5S")
  Duration outbox();

  /** How many changes to send at once. */
  @WithDefault("500")
  int outboxBatch();

  /** How many records of the stream to take in one transaction. */
  @WithDefault("200")
  int batch();

  /**
   * Where people find the pages, for the link in a message, such as {@code
   * https://driftward.hospital.example}; messages carry no link without it.
   */
  Optional<String> address();

  /** The sender of mail; no mail is sent without one. The server is {@code quarkus.mailer}'s. */
  @WithDefault("${quarkus.mailer.from:}")
  Optional<String> mailFrom();

  /** Programs that page or telephone, by the name that the policy's recipients use. */
  Map<String, Webhook> webhooks();

  /** How many alarms to send at once by each channel. */
  @WithDefault("2")
  int senders();

  /** How often to look for an alarm that is to be sent. */
  @WithDefault("PT0.5S")
  Duration outreach();

  /** Where one program is called, and how it knows that we call. */
  interface Webhook {

    /** HTTPS; plain HTTP only on this machine. */
    String url();

    /** Which secret signs, so that a receiver can change secrets without losing a call. */
    @WithDefault("1")
    String keyId();

    /** Shared with the receiver, at least 32 characters. Never logged. */
    String secret();
  }

  /** The longest pause between two attempts while Kafka or the database is away. */
  @WithDefault("PT5S")
  Duration longestBackOff();

  Anchors anchors();

  /** What the end of the journal was, kept out of reach of the database's owner. */
  interface Anchors {

    /** Where the file of the anchors is; without it none are kept. */
    Optional<Path> folder();

    /**
     * A file with both halves of the key that signs the anchors, as {@code journal key} makes it;
     * readable by this process, not by the database's owner. Without it anchors are chained only.
     */
    Optional<Path> key();

    /** How often the end of the journal is kept. */
    @WithDefault("PT10M")
    Duration every();
  }
}
