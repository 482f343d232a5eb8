package org.driftward.deploy.demo;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.contract.Setting;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jspecify.annotations.Nullable;

/** Runs the demo where it is switched on, beside the intake that it feeds. */
@Singleton
public class DemoPart extends RepeatingPart implements RolePart {

  private static final Duration PACE = Duration.ofMillis(500);
  private static final Duration PATIENCE = Duration.ofSeconds(3);

  private final Setting setting;
  private final DemoData data;
  private final Clock clock;
  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final CarePlanDesk carePlans;
  private final Accounts accounts;
  private final DemoStaff staff;
  private @Nullable DemoFeed feed;

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
    super("demo-ward", PATIENCE);
    this.setting = setting;
    this.data = data;
    this.clock = clock;
    this.intake = intake;
    this.directory = directory;
    this.carePlans = carePlans;
    this.accounts = accounts;
    this.staff = new DemoStaff(episodes, clock);
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public void start() {
    if (setting.demo()) {
      super.start();
    }
  }

  @Override
  public Condition condition() {
    return setting.demo() ? super.condition() : Condition.ok();
  }

  /** Anything that goes wrong is tried again: the parts the demo leans on may be starting. */
  @Override
  public Duration run() throws InterruptedException {
    open().catchUp();
    staff.makeRounds();
    return PACE;
  }

  private DemoFeed open() throws InterruptedException {
    var open = feed;
    if (open == null) {
      open = new DemoFeed(data.file(), clock, intake, directory, carePlans, accounts);
      open.open();
      feed = open;
    }
    return open;
  }
}
