package org.driftward.scoring.definition;

/** A score definition that cannot be used. The message begins with file and line. */
public final class BrokenDefinitionException extends IllegalStateException {

  private static final long serialVersionUID = 1L;

  private final int line;

  BrokenDefinitionException(String file, int line, String fault) {
    super(file + ":" + line + ": " + fault);
    this.line = line;
  }

  /** The line at fault, from 1. */
  public int line() {
    return line;
  }
}
