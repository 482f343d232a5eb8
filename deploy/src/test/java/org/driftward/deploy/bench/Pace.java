package org.driftward.deploy.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.LongAdder;

/**
 * What went through in a time.
 *
 * @param messages accepted
 * @param assessments in them
 * @param lasted wall clock
 * @param cpu what the application used meanwhile
 */
record Pace(long messages, long assessments, Duration lasted, Duration cpu) {

  /** Sends as fast as answers come, for at least {@code span}. */
  static Pace of(Feed feed, Duration span, Callable<Duration> cpu) throws Exception {
    var messages = new LongAdder();
    var assessments = new LongAdder();
    var pool = Executors.newFixedThreadPool(feed.senders());
    try {
      var cpuBefore = cpu.call();
      long start = System.nanoTime();
      long end = start + span.toNanos();
      var senders = new ArrayList<Future<?>>();
      for (int i = 0; i < feed.senders(); i++) {
        senders.add(
            pool.submit(
                () -> {
                  while (System.nanoTime() < end) {
                    assessments.add(feed.send());
                    messages.add(feed.messages());
                  }
                  return null;
                }));
      }
      for (var sender : senders) {
        sender.get();
      }
      var lasted = Duration.ofNanos(System.nanoTime() - start);
      return new Pace(messages.sum(), assessments.sum(), lasted, cpu.call().minus(cpuBefore));
    } finally {
      pool.shutdownNow();
    }
  }

  double messagesPerSecond() {
    return messages * 1e9 / lasted.toNanos();
  }

  double assessmentsPerSecond() {
    return assessments * 1e9 / lasted.toNanos();
  }

  /** Of the application, for each assessment. */
  double cpuMicros() {
    return cpu.toNanos() / 1e3 / assessments;
  }
}
