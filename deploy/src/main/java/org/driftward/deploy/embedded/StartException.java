package org.driftward.deploy.embedded;

/** Why the application cannot start, in words for the person who started it. */
public final class StartException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public StartException(String message) {
    super(message);
  }

  public StartException(String message, Throwable cause) {
    super(message, cause);
  }
}
