package org.driftward.deploy.whole;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Hears what a page plays: when each pulse begins and ends by the sound's own clock, and how loud
 * it is where it leaves the page.
 */
final class Ear {

  /** In front of every script of the page. What the page plays stays as it is. */
  private static final String LISTEN =
      """
      window.pulses = [];
      window.peak = 0;
      const start = OscillatorNode.prototype.start;
      OscillatorNode.prototype.start = function (when) {
        this.since = when;
        this.hertz = this.frequency.value;
        return start.call(this, when);
      };
      const stop = OscillatorNode.prototype.stop;
      OscillatorNode.prototype.stop = function (when) {
        window.pulses.push({from: this.since, to: when, hertz: this.hertz});
        return stop.call(this, when);
      };
      const connect = AudioNode.prototype.connect;
      AudioNode.prototype.connect = function (to, ...more) {
        if (to instanceof AudioDestinationNode) {
          const ear = this.context.createAnalyser();
          connect.call(this, ear);
          const heard = new Float32Array(ear.fftSize);
          setInterval(() => {
            ear.getFloatTimeDomainData(heard);
            window.peak = Math.max(window.peak, ...heard.map(Math.abs));
          }, 20);
        }
        return connect.call(this, to, ...more);
      };
      """;

  private static final int TRIES = 600;
  private static final int PAUSE_MILLIS = 100;

  private final Page page;

  private Ear(Page page) {
    this.page = page;
  }

  /** A page of the context that is listened to from its beginning. */
  static Ear at(BrowserContext context) {
    context.addInitScript(LISTEN);
    return new Ear(context.newPage());
  }

  Page page() {
    return page;
  }

  /**
   * One pulse, as it is scheduled.
   *
   * @param from and to in seconds of the sound's own clock
   */
  record Pulse(double from, double to, double hertz) {
    double length() {
      return to - from;
    }
  }

  /** The first so many. */
  List<Pulse> pulses(int count) {
    await("() => window.pulses.length >= " + count);
    var numbers =
        (List<?>)
            page.evaluate(
                "count => window.pulses.slice(0, count).flatMap(p => [p.from, p.to, p.hertz])",
                count);
    var all = numbers.stream().mapToDouble(number -> ((Number) number).doubleValue()).toArray();
    return IntStream.range(0, count)
        .mapToObj(i -> new Pulse(all[3 * i], all[3 * i + 1], all[3 * i + 2]))
        .toList();
  }

  /** Waits until something can be heard; full scale is 1. */
  void awaitSound() {
    page.evaluate("() => { window.peak = 0; }");
    await("() => window.peak > 0.05");
  }

  /** Asked from outside: the page's own policy forbids a script that waits in it. */
  void await(String predicate) {
    for (int i = 0; i < TRIES; i++) {
      if (page.evaluate(predicate).equals(true)) {
        return;
      }
      page.waitForTimeout(PAUSE_MILLIS);
    }
    throw new AssertionError("not within a minute: " + predicate);
  }

  /** Whether nothing at all is heard for as long as that. */
  boolean isSilentFor(int millis) {
    page.evaluate("() => { window.peak = 0; }");
    page.waitForTimeout(millis);
    return ((Number) page.evaluate("() => window.peak")).doubleValue() < 0.001;
  }
}
