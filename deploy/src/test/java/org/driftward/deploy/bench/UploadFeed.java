package org.driftward.deploy.bench;

import java.util.Map;
import java.util.function.IntFunction;
import org.driftward.deploy.whole.Caller;

/** Whole files, each sent at once and waited for until every row of it is dealt with. */
final class UploadFeed implements Feed {

  private static final int SENDERS = 2;
  private static final int ROWS = 5_000;
  private static final long PAUSE_MILLIS = 50;

  private final String name;
  private final String type;
  private final Caller caller;
  private final IntFunction<String> files;

  /**
   * @param files a file of so many rows
   */
  UploadFeed(String name, String type, Caller caller, IntFunction<String> files) {
    this.name = name;
    this.type = type;
    this.caller = caller;
    this.files = files;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public int senders() {
    return SENDERS;
  }

  /** A row is a message: each is accepted or refused by itself. */
  @Override
  public int messages() {
    return ROWS;
  }

  @Override
  public int send() throws InterruptedException {
    var begun =
        caller.send("POST", "/api/imports", Map.of("Content-Type", type), files.apply(ROWS));
    if (begun.status() != 202) {
      throw new IllegalStateException(begun.status() + " " + begun.body());
    }
    var progress = begun.header("Location").orElseThrow();
    var now = caller.get(progress).json();
    while (now.get("state").asText().equals("running")) {
      Thread.sleep(PAUSE_MILLIS);
      now = caller.get(progress).json();
    }
    if (now.get("accepted").asInt() != ROWS) {
      throw new IllegalStateException(now.toString());
    }
    return ROWS;
  }
}
