package org.driftward.alerts.config;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.ZoneId;
import java.util.concurrent.ThreadLocalRandom;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.handover.Isbar;
import org.driftward.alerts.core.outreach.Chance;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Leaders;

/** Turns the settings into the pure core, which knows no configuration. */
@Singleton
public class AlertsBeans {

  @Produces
  @Singleton
  PolicyFile policyFile(AlertsConfig config) {
    return config.policy().map(PolicyFile::read).orElseGet(PolicyFile::shipped);
  }

  @Produces
  @Singleton
  Reach reach(AlertsConfig config) {
    return new Reach(config.mailFrom().isPresent(), config.webhooks().keySet());
  }

  @Produces
  @Singleton
  Chance chance() {
    return () -> ThreadLocalRandom.current().nextDouble();
  }

  @Produces
  @Singleton
  Escalation escalation(
      PolicyFile file, Leaders leaders, Catalogue catalogue, AlertsConfig config) {
    file.policy().triggers().answers(leaders.scores());
    var wording =
        new Wording(catalogue, config.zone().map(ZoneId::of).orElseGet(ZoneId::systemDefault));
    var policy = file.policy();
    return new Escalation(policy, new Triggers(policy.triggers(), catalogue, wording));
  }

  @Produces
  @Singleton
  Isbar isbar(PolicyFile file, Catalogue catalogue, AlertsConfig config) {
    return new Isbar(
        file.policy(), catalogue, config.zone().map(ZoneId::of).orElseGet(ZoneId::systemDefault));
  }
}
