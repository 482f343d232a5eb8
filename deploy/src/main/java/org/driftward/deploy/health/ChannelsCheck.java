package org.driftward.deploy.health;

import io.smallrye.health.api.Wellness;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.deploy.roles.PlayedRoles;
import org.driftward.ingest.contract.Role;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;

/**
 * Names the channels by which the policy tells people and that are not configured where alarms are
 * sent. Never red: the process works, and starting it again would mend nothing.
 */
@Wellness
@Singleton
public class ChannelsCheck implements HealthCheck {

  private final DeliveryDesk desk;
  private final PlayedRoles roles;

  @Inject
  ChannelsCheck(DeliveryDesk desk, PlayedRoles roles) {
    this.desk = desk;
    this.roles = roles;
  }

  @Override
  public HealthCheckResponse call() {
    return HealthCheckResponse.named("channels").up().withData("off", off()).build();
  }

  private String off() {
    if (!roles.plays(Role.ALERTS)) {
      return "this process sends no alarms";
    }
    var off = desk.channelsOff();
    return off.isEmpty() ? "none" : String.join("; ", off);
  }
}
