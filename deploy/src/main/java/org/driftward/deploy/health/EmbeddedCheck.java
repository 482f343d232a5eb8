package org.driftward.deploy.health;

import jakarta.inject.Singleton;
import org.driftward.deploy.embedded.Watched;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Red while an embedded broker or database has ended and is started again. */
@Readiness
@Singleton
public class EmbeddedCheck implements HealthCheck {

  @Override
  public HealthCheckResponse call() {
    var response = HealthCheckResponse.named("embedded");
    boolean well = true;
    for (var part : Watched.conditions().entrySet()) {
      response.withData(part.getKey(), part.getValue().why());
      well &= part.getValue().well();
    }
    return response.status(well).build();
  }
}
