package org.driftward.deploy.embedded;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/** Several parts as one: they start at the same time and stop in the reverse of their order. */
public final class EmbeddedParts implements EmbeddedPart {

  private final Deque<EmbeddedPart> running = new ArrayDeque<>();

  private EmbeddedParts() {}

  /**
   * Returns once all of them run.
   *
   * @param starts in the order in which one leans on the other: the last is stopped first
   * @throws StartException if one does not start; then none is left running
   */
  public static EmbeddedParts start(List<Supplier<EmbeddedPart>> starts) {
    var parts = new EmbeddedParts();
    var pending =
        starts.stream()
            .map(start -> CompletableFuture.supplyAsync(start, EmbeddedParts::inThread))
            .toList();
    StartException failure = null;
    for (var start : pending) {
      try {
        parts.running.push(start.join());
      } catch (CompletionException e) {
        failure = e.getCause() instanceof StartException known ? known : unexpected(e);
      }
    }
    if (failure != null) {
      parts.close();
      throw failure;
    }
    return parts;
  }

  @Override
  public Map<String, String> properties() {
    var all = new HashMap<String, String>();
    running.forEach(part -> all.putAll(part.properties()));
    return all;
  }

  @Override
  public void close() {
    while (!running.isEmpty()) {
      running.pop().close();
    }
  }

  private static void inThread(Runnable start) {
    new Thread(start, "embedded-start").start();
  }

  private static StartException unexpected(CompletionException e) {
    return new StartException("An embedded part does not start: " + e.getCause(), e.getCause());
  }
}
