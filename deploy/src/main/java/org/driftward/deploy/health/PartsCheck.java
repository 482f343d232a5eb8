package org.driftward.deploy.health;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import org.driftward.deploy.roles.PlayedParts;
import org.driftward.deploy.roles.RoleLauncher;
import org.driftward.ground.part.Part;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/** Red as long as any part of the played roles is ill; names each part and its condition. */
@Readiness
@Singleton
public class PartsCheck implements HealthCheck {

  private final RoleLauncher launcher;
  private final PlayedParts parts;

  @Inject
  PartsCheck(RoleLauncher launcher, PlayedParts parts) {
    this.launcher = launcher;
    this.parts = parts;
  }

  @Override
  public HealthCheckResponse call() {
    var response = HealthCheckResponse.named("parts");
    boolean well = say(response, "launch", launcher.condition());
    for (var part : parts.inOrder()) {
      well &= say(response, part.name(), part.condition());
    }
    return response.status(well).build();
  }

  private static boolean say(
      HealthCheckResponseBuilder response, String name, Part.Condition condition) {
    response.withData(name, condition.why());
    return condition.well();
  }
}
