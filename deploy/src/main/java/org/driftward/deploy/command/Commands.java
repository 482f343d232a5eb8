package org.driftward.deploy.command;

import java.io.PrintWriter;
import java.nio.charset.Charset;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

/** Every command of the jar. Without a command the jar serves. */
@Command(
    name = "driftward",
    description = "Without a command: serve. With one: ask a server that runs.",
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {HelpCommand.class, JournalCommand.class})
public final class Commands {

  private Commands() {}

  /** The commands as a picocli line, writing to {@code out} and {@code err}. */
  static CommandLine line(PrintWriter out, PrintWriter err) {
    return new CommandLine(new Commands())
        .setOut(out)
        .setErr(err)
        .setExecutionExceptionHandler(new Failure());
  }

  /**
   * Runs one command.
   *
   * @return 0 if it succeeded, 1 if its answer is a bad one or the server cannot be asked, 2 if it
   *     was called wrongly
   */
  public static int run(String... arguments) {
    var terminal = Charset.defaultCharset();
    return line(
            new PrintWriter(System.out, true, terminal),
            new PrintWriter(System.err, true, terminal))
        .execute(arguments);
  }
}
