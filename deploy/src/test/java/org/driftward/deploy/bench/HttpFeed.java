package org.driftward.deploy.bench;

import java.util.function.Supplier;
import org.driftward.deploy.whole.Caller;

/** JSON over HTTP, each sender waiting for its answer. */
final class HttpFeed implements Feed {

  private static final int SENDERS = 16;

  private final String name;
  private final String path;
  private final Caller caller;
  private final Supplier<String> bodies;
  private final int assessments;

  /**
   * @param assessments how many each body holds
   */
  HttpFeed(String name, String path, Caller caller, Supplier<String> bodies, int assessments) {
    this.name = name;
    this.path = path;
    this.caller = caller;
    this.bodies = bodies;
    this.assessments = assessments;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public int senders() {
    return SENDERS;
  }

  @Override
  public int send() {
    var answer = caller.post(path, bodies.get());
    if (answer.status() / 100 != 2) {
      throw new IllegalStateException(answer.status() + " " + answer.body());
    }
    return assessments;
  }
}
