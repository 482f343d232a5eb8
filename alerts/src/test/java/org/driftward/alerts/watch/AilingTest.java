package org.driftward.alerts.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.junit.jupiter.api.Test;

class AilingTest {

  private final Part clock = new Part(Role.ALERTS, "ladder-clock");
  private final Part sender = new Part(Role.ALERTS, "alarm-sender");
  private final Part scoring = new Part(Role.SCORING, "scoring-streams");
  private final List<RolePart> parts = List.of(clock, sender, scoring);
  private final Ailing ailing = new Ailing();

  @Test
  void shouldNameWhatIsIllTwiceRunning() {
    clock.well = false;
    assertThat(ailing.among(parts)).isEmpty();

    sender.well = false;
    assertThat(ailing.among(parts)).containsExactly("ladder-clock");
    assertThat(ailing.among(parts)).containsExactlyInAnyOrder("ladder-clock", "alarm-sender");
  }

  @Test
  void shouldForgetWhatMendedItself() {
    clock.well = false;
    ailing.among(parts);
    clock.well = true;
    ailing.among(parts);
    clock.well = false;

    assertThat(ailing.among(parts)).isEmpty();
  }

  @Test
  void shouldLeaveOtherRolesAlone() {
    scoring.well = false;
    ailing.among(parts);

    assertThat(ailing.among(parts)).isEmpty();
  }

  private static final class Part implements RolePart {
    private final Role role;
    private final String name;
    private boolean well = true;

    Part(Role role, String name) {
      this.role = role;
      this.name = name;
    }

    @Override
    public Role role() {
      return role;
    }

    @Override
    public String name() {
      return name;
    }

    @Override
    public void start() {}

    @Override
    public void stop() {}

    @Override
    public Condition condition() {
      return well ? Condition.ok() : Condition.ill("for the test");
    }
  }
}
