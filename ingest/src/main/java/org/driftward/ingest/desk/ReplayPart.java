package org.driftward.ingest.desk;

import io.quarkus.arc.All;
import jakarta.inject.Singleton;
import java.util.List;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.store.ReplayQueue;
import org.driftward.ingest.store.StoredCodes;
import org.driftward.ingest.work.Repeating;

/** Replays what the desk asks for, each through the gate that refused it. */
@Singleton
public class ReplayPart implements RolePart {

  private final StoredCodes codes;
  private final List<Gate> gates;
  private final Repeating work;

  public ReplayPart(ReplayQueue queue, StoredCodes codes, @All List<Gate> gates) {
    this.codes = codes;
    this.gates = gates;
    this.work = new Repeating("replays", () -> queue.play(this::play));
  }

  /** With the codes as they were mapped before the replay was asked for, or newer. */
  private Passage play(Received received, Bearer bearer) {
    codes.refresh();
    return gates.stream()
        .filter(gate -> gate.serves(received.target()))
        .findFirst()
        .map(gate -> gate.pass(received, bearer))
        .orElseGet(
            () ->
                Passage.refused(
                    Rule.NO_GATE, "what came in this way can only be sent again by its sender"));
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "replays";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
