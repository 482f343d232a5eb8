package org.driftward.deploy;

import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.io.PrintStream;
import java.util.List;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.deploy.demo.DemoAccounts;
import org.driftward.deploy.roles.Launched;
import org.driftward.deploy.roles.PlayedRoles;
import org.driftward.ingest.contract.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Tells whoever started it where to go and, in the demo, as whom. */
@Singleton
class Welcome {

  @ConfigProperty(name = "quarkus.http.host")
  String host;

  @ConfigProperty(name = "quarkus.http.port")
  int port;

  void greet(
      @Observes Launched launched, DeploySettings settings, DeliveryDesk desk, PlayedRoles roles) {
    var off = roles.plays(Role.ALERTS) ? desk.channelsOff() : List.<String>of();
    greet(System.out, settings.demo().enabled(), off);
  }

  private void greet(PrintStream out, boolean demo, List<String> off) {
    out.printf("%nDriftward is running: http://%s:%d%n", host, port);
    if (demo) {
      out.printf("%nInvented patients, in accelerated time. Sign in as one of:%n");
      for (var person : DemoAccounts.people()) {
        out.printf(
            "  %-16s %-12s wards %s%n",
            person.name(), String.join(" ", person.roles()), String.join(" ", person.wards()));
      }
      out.printf("with the password %s%n", DemoAccounts.PASSWORD);
    }
    off.forEach(words -> out.printf("%n%s: nobody is told by it.%n", words));
    out.printf(
        "%nDecision support, not a certified medical device: clinical judgement and local policy"
            + " come first.%nCtrl-C stops it.%n%n");
  }
}
