package org.driftward.deploy.demo;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.driftward.deploy.config.DeploySettings;

/** Tells the demo where this process keeps its data. */
final class DemoBeans {

  @Produces
  @Singleton
  DemoData data(DeploySettings settings) {
    return new DemoData(settings.data().resolve("demo-ward"));
  }
}
