package org.driftward.deploy.bench;

import org.driftward.testing.Logs;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

/** Everything that can be measured. */
@Command(
    name = "deploy/bench",
    synopsisSubcommandLabel = "NAME",
    subcommands = {
      HelpCommand.class,
      AlarmLoadBench.class,
      ImportBench.class,
      IntakeBench.class,
      NarrativeBench.class,
      ScoringBench.class
    })
public final class Bench {

  private Bench() {}

  /** Runs one measurement and ends the virtual machine. */
  public static void main(String... arguments) {
    Logs.quiet();
    System.exit(new CommandLine(new Bench()).execute(arguments));
  }
}
