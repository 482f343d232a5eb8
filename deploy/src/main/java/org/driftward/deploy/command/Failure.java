package org.driftward.deploy.command;

import java.io.IOException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Says in one line why a server could not be asked; what nobody expected keeps its trace. */
final class Failure implements IExecutionExceptionHandler {

  @Override
  public int handleExecutionException(Exception failure, CommandLine command, ParseResult parsed)
      throws Exception {
    if (failure instanceof IOException) {
      command.getErr().println(failure.getMessage() == null ? failure : failure.getMessage());
      return command.getCommandSpec().exitCodeOnExecutionException();
    }
    throw failure;
  }
}
