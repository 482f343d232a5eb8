package org.driftward.deploy.demo;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.contract.Setting;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/** Runs the demo where it is switched on, beside the intake that it feeds. */
@Singleton
public final class DemoPart implements RolePart {

  private static final Logger LOG = Logger.getLogger(DemoPart.class);
  private static final long PACE_MILLIS = 500;
  private static final long PATIENCE_MILLIS = 3_000;

  private final Setting setting;
  private final DemoData data;
  private final Clock clock;
  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final CarePlanDesk carePlans;
  private final EpisodeDesk episodes;
  private final Accounts accounts;
  private volatile Condition condition = Condition.ok();
  private Thread thread;

  @Inject
  DemoPart(
      Setting setting,
      DemoData data,
      Clock clock,
      AssessmentIntake intake,
      EncounterDirectory directory,
      CarePlanDesk carePlans,
      EpisodeDesk episodes,
      Accounts accounts) {
    this.setting = setting;
    this.data = data;
    this.clock = clock;
    this.intake = intake;
    this.directory = directory;
    this.carePlans = carePlans;
    this.episodes = episodes;
    this.accounts = accounts;
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "demo-ward";
  }

  @Override
  public void start() {
    if (setting.demo()) {
      thread = new Thread(this::run, "demo-ward");
      thread.start();
    }
  }

  @Override
  public void stop() {
    if (thread != null) {
      thread.interrupt();
      try {
        thread.join(5_000);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      thread = null;
    }
  }

  @Override
  public Condition condition() {
    return condition;
  }

  private void run() {
    try {
      var feed = new DemoFeed(data.file(), clock, intake, directory, carePlans, accounts);
      var staff = new DemoStaff(episodes, clock);
      boolean open = false;
      while (true) {
        open = tryStep(feed, staff, open);
        Thread.sleep(condition.well() ? PACE_MILLIS : PATIENCE_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Anything that goes wrong is tried again: the parts the demo leans on may be starting. */
  private boolean tryStep(DemoFeed feed, DemoStaff staff, boolean open)
      throws InterruptedException {
    try {
      if (!open) {
        feed.open();
      }
      feed.catchUp();
      staff.makeRounds();
      condition = Condition.ok();
      return true;
    } catch (RuntimeException e) {
      LOG.warnf("The demo ward waits for the service: %s", e.getMessage());
      condition = Condition.ill("waiting for the service");
      return open;
    }
  }
}
