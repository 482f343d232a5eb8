package org.driftward.ground.failure;

import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;

/**
 * What PostgreSQL says went wrong, five characters of which the first two are the class (ISO/IEC
 * 9075; PostgreSQL manual, appendix A).
 */
public record SqlState(String code) {

  /** Serialisation failure and deadlock. */
  private static final Set<String> TRY_AGAIN = Set.of("40001", "40P01");

  /** Data exception and integrity violation. */
  private static final Set<String> DATA = Set.of("22", "23");

  /** Of the outermost cause that has one. */
  public static Optional<SqlState> of(Throwable failure) {
    return Failures.causes(failure)
        .filter(t -> t instanceof SQLException sql && sql.getSQLState() != null)
        .map(t -> new SqlState(((SQLException) t).getSQLState()))
        .findFirst();
  }

  /** Whether PostgreSQL asks to try the same transaction again. */
  public boolean asksToTryAgain() {
    return TRY_AGAIN.contains(code);
  }

  /** Whether the data itself is wrong, so that trying again will not help. */
  public boolean blamesTheData() {
    return code.length() > 2 && DATA.contains(code.substring(0, 2));
  }
}
