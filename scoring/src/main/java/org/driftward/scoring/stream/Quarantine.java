package org.driftward.scoring.stream;

import java.time.Instant;
import java.util.Base64;
import java.util.List;
import org.apache.kafka.streams.processor.api.Record;
import org.apache.kafka.streams.processor.api.RecordMetadata;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.jboss.logging.Logger;

/**
 * The failure policy for a record that cannot be processed: it is set aside on {@link
 * Topic#REJECTED}, byte for byte, with the reason, in the same transaction that moves past it.
 * Nothing is lost, and nothing stops. A failure of Kafka or of the store is none of its business:
 * there the transaction is aborted and the record comes again.
 */
final class Quarantine {

  /** Key of what is set aside here. */
  static final String ORIGIN = "scoring";

  private static final Logger LOG = Logger.getLogger(Quarantine.class);
  private static final JsonFormat<Rejection> REJECTION = JsonFormat.of(Rejection.class);

  private Quarantine() {}

  /** A record whose payload belongs to another encounter than its key. */
  static final class WrongKeyException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WrongKeyException() {
      super("the key of the record is not its encounter");
    }
  }

  /** The record for {@link Topic#REJECTED}. Logs where the failure is, never what. */
  static Record<String, byte[]> of(
      Record<String, byte[]> failed, RecordMetadata at, RuntimeException failure) {
    var fault = fault(failure);
    LOG.errorf(
        "Set aside a record that cannot be processed: topic=%s partition=%d offset=%d rule=%s",
        at.topic(), at.partition(), at.offset(), fault.rule());
    LOG.debug("Failure while processing", withoutMessage(failure));
    var bytes = failed.value() == null ? new byte[0] : failed.value();
    var rejection =
        new Rejection(
            ORIGIN + "-" + at.topic() + "-" + at.partition() + "-" + at.offset(),
            ORIGIN,
            Source.FILE,
            at.topic(),
            Instant.ofEpochMilli(failed.timestamp()),
            "application/json",
            Base64.getEncoder().encodeToString(bytes),
            List.of(fault));
    return new Record<>(ORIGIN, REJECTION.write(rejection), failed.timestamp());
  }

  private static Fault fault(RuntimeException failure) {
    var words = String.valueOf(failure.getMessage());
    if (failure instanceof MalformedException) {
      return new Fault("", "malformed", words);
    }
    if (failure instanceof WrongKeyException) {
      return new Fault("/encounter", "wrong-key", words);
    }
    return new Fault("", "unprocessable", failure.getClass().getSimpleName() + ": " + words);
  }

  /** The place of a failure without its message, which may name a value. */
  private static Throwable withoutMessage(RuntimeException failure) {
    var silent = new RuntimeException(failure.getClass().getName());
    silent.setStackTrace(failure.getStackTrace());
    return silent;
  }
}
