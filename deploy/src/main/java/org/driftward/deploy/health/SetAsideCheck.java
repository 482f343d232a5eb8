package org.driftward.deploy.health;

import io.smallrye.health.api.Wellness;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import org.driftward.ground.store.Quarantine;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;

/**
 * Says how many things each part has set aside, and what that means now. Never red: everything else
 * goes on, and starting the process again would mend nothing.
 */
@Wellness
@Singleton
public class SetAsideCheck implements HealthCheck {

  private final Quarantine quarantine;

  @Inject
  SetAsideCheck(Quarantine quarantine) {
    this.quarantine = quarantine;
  }

  @Override
  public HealthCheckResponse call() {
    var response = HealthCheckResponse.named("set-aside").up();
    quarantine.counts().forEach(response::withData);
    var now = quarantine.told().stream().map(told -> told.part() + ": " + told.means()).distinct();
    var words = String.join(" ", now.toList());
    return response.withData("now", words.isEmpty() ? "nothing" : words).build();
  }
}
