package org.driftward.ground.failure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.kafka.common.KafkaException;
import org.jdbi.v3.core.ConnectionException;

/** Tells where a failure lies; see the package. Stateless. */
public final class Failures {

  private Failures() {}

  /**
   * Whether the virtual machine is at its end. A stack that one item overflowed is no such end: it
   * is empty again by the time somebody asks.
   */
  public static boolean isOfTheMachine(Throwable failure) {
    return causes(failure)
        .anyMatch(t -> t instanceof VirtualMachineError && !(t instanceof StackOverflowError));
  }

  /**
   * Whether the same item will fail in the same way again: what it says cannot be read or kept.
   * Whatever PostgreSQL says of anything but the data (SQLSTATE classes 22 and 23), and whatever
   * comes from Kafka or a file, is no fault of an item.
   */
  public static boolean isOfTheItem(Throwable failure) {
    if (failure instanceof Error) {
      return failure instanceof StackOverflowError;
    }
    var state = SqlState.of(failure);
    return state.map(SqlState::blamesTheData).orElseGet(() -> !isFromOutside(failure));
  }

  private static boolean isFromOutside(Throwable failure) {
    return causes(failure)
        .anyMatch(
            t ->
                t instanceof SQLException
                    || t instanceof ConnectionException
                    || t instanceof KafkaException
                    || t instanceof IOException
                    || t instanceof UncheckedIOException
                    || t instanceof InterruptedException);
  }

  /** The classes of a failure and of what caused it; no message, which may quote a record. */
  public static String kind(Throwable failure) {
    return causes(failure)
        .map(t -> t.getClass().getSimpleName())
        .collect(Collectors.joining(" by "));
  }

  /** The failure and what caused it, outermost first. */
  static Stream<Throwable> causes(Throwable failure) {
    return Stream.iterate(failure, t -> t != null, Throwable::getCause).limit(DEEPEST);
  }

  /** Causes may go round in a circle. */
  private static final int DEEPEST = 20;
}
