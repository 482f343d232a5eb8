package org.driftward.deploy.time;

import jakarta.enterprise.inject.Disposes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import org.driftward.dashboard.contract.Setting;
import org.driftward.deploy.config.DeploySettings;

/** Chooses the clock of this process, and tells the pages about it. */
final class ClockProducer {

  @Produces
  @Singleton
  Clock clock(DeploySettings settings) {
    if (!settings.demo().enabled()) {
      return Clock.systemUTC();
    }
    var file = settings.data().resolve("ward-clock");
    return new WardClock(
        settings.demo().clockRate(),
        System::nanoTime,
        new ClockFile(file),
        Clock.systemUTC().instant());
  }

  void rest(@Disposes Clock clock) {
    if (clock instanceof WardClock wardClock) {
      wardClock.rest();
    }
  }

  @Produces
  @Singleton
  Setting setting(DeploySettings settings) {
    var demo = settings.demo();
    return new Setting(demo.enabled(), demo.enabled() ? demo.clockRate() : 1);
  }
}
