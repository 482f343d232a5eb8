package org.driftward.deploy.command;

import java.io.PrintWriter;

/**
 * How far something is, on a terminal as one line that changes, elsewhere as a line now and then.
 */
final class ProgressBar {

  private static final int WIDTH = 30;

  private final PrintWriter out;
  private final boolean terminal;
  private String shown = "";
  private long percent;

  ProgressBar(PrintWriter out, boolean terminal) {
    this.out = out;
    this.terminal = terminal;
  }

  /**
   * @param words what goes on; a line of its own where there is no terminal
   */
  void show(String words, long done, long all) {
    percent = all == 0 ? 100 : Math.min(100, 100 * done / all);
    say(words);
  }

  /** Something else goes on; nothing has moved. */
  void say(String words) {
    var line = terminal ? bar(percent) + " " + words : words + " " + percent / 10 * 10 + " %";
    if (line.equals(shown)) {
      return;
    }
    shown = line;
    if (terminal) {
      // Blanks behind it wipe out a longer line before.
      out.printf("\r%-78s", line);
      out.flush();
    } else {
      out.println(line);
    }
  }

  private static String bar(long percent) {
    int full = (int) (WIDTH * percent / 100);
    return "[%s%s] %3d %%".formatted("#".repeat(full), ".".repeat(WIDTH - full), percent);
  }

  void end() {
    if (terminal) {
      out.println();
    }
  }
}
