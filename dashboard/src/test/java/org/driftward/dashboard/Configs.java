package org.driftward.dashboard;

import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.util.Map;
import org.driftward.dashboard.config.DashboardConfig;

/** The dashboard's settings with their defaults and a test's own values. */
public final class Configs {

  private Configs() {}

  public static DashboardConfig of(Map<String, String> values) {
    return new SmallRyeConfigBuilder()
        .withMapping(DashboardConfig.class)
        .withSources(new PropertiesConfigSource(values, "test", 100))
        .build()
        .getConfigMapping(DashboardConfig.class);
  }
}
