package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.kafka.KafkaEncounterDirectory;
import org.driftward.ingest.store.FileMappings;
import org.driftward.ingest.store.Imports;
import org.driftward.ingest.store.Imports.Added;
import org.driftward.ingest.store.Upload;
import org.jspecify.annotations.Nullable;

/**
 * Takes the parts of files. While Kafka is away it takes none, so that what waits on disk stays
 * bounded; what it took before is worked off by itself when Kafka is back. Thread-safe.
 */
@Singleton
final class Uploads {

  private final Imports imports;
  private final FileMappings mappings;
  private final KafkaEncounterDirectory kafka;
  private final ImportPart part;
  private final IngestConfig.Imports limits;
  private final Clock clock;

  Uploads(
      Imports imports,
      FileMappings mappings,
      KafkaEncounterDirectory kafka,
      ImportPart part,
      IngestConfig config,
      Clock clock) {
    this.imports = imports;
    this.mappings = mappings;
    this.kafka = kafka;
    this.part = part;
    this.limits = config.imports();
    this.clock = clock;
  }

  /**
   * A file's beginning.
   *
   * @param mapping name of how its header is read, or null for our own
   * @param key by which the sender finds it again, or null
   * @param last whether it is the whole file
   */
  record First(
      String contentType,
      String name,
      @Nullable String mapping,
      @Nullable String key,
      @Nullable Long length,
      Bytes bytes,
      boolean last) {}

  /** What to tell the sender. */
  sealed interface Answer {
    record Kept(FileImport now) implements Answer {}

    /**
     * @param offset where to go on, or null where that is not the matter
     */
    record Refused(Problem problem, @Nullable Long offset) implements Answer {}
  }

  /**
   * @throws org.driftward.ingest.contract.AssessmentIntake.UnavailableException if Kafka or the
   *     database does not answer
   */
  Answer begin(First first, Bearer bearer) {
    kafka.confirm();
    if (tooLarge(0, first.bytes().length())) {
      return tooLarge();
    }
    var mapping = first.mapping();
    var text = mapping == null ? null : mappings.find(mapping).orElse(null);
    if (mapping != null && text == null) {
      var fault = new Fault("", "unknown-mapping", "there is no mapping of this name");
      return new Answer.Refused(
          new Problem(
              "/problems/refused-input", "The file was not taken", 400, null, List.of(fault)),
          null);
    }
    var begun =
        imports.begin(
            new Upload(
                UUID.randomUUID().toString(),
                key(first),
                first.name(),
                first.contentType(),
                mapping,
                text,
                bearer.account(),
                bearer.sight(),
                clock.instant(),
                first.last() ? Long.valueOf(first.bytes().length()) : first.length()));
    return begun.received() > 0 || begun.complete()
        ? new Answer.Kept(begun)
        : added(begun.id(), 0, first.bytes(), first.last());
  }

  Answer add(String id, long offset, Bytes bytes, boolean last) {
    kafka.confirm();
    return tooLarge(offset, bytes.length()) ? tooLarge() : added(id, offset, bytes, last);
  }

  private Answer added(String id, long offset, Bytes bytes, boolean last) {
    var added = imports.add(id, offset, bytes.array(), last);
    if (added instanceof Added.Kept kept) {
      part.ring();
      return new Answer.Kept(kept.now());
    }
    long expected = ((Added.Elsewhere) added).now().received();
    return new Answer.Refused(
        Problem.of(409, "other-offset", "The file goes on elsewhere", "go on at byte " + expected),
        expected);
  }

  private boolean tooLarge(long offset, int length) {
    return length > limits.part().asLongValue() || offset + length > limits.largest().asLongValue();
  }

  private Answer tooLarge() {
    return new Answer.Refused(
        Problem.of(
            413,
            "too-large",
            "The file or this part of it is larger than this installation takes",
            "send parts of at most "
                + limits.part().asLongValue()
                + " bytes, and files of at most "
                + limits.largest().asLongValue()),
        null);
  }

  /** Without a key, the same whole file is the same import: a call repeated after a lost answer. */
  private static String key(First first) {
    if (first.key() != null) {
      return first.key();
    }
    return first.last() ? hash(first.bytes().array()) : UUID.randomUUID().toString();
  }

  private static String hash(byte[] bytes) {
    try {
      var digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return "sha-256:" + HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
