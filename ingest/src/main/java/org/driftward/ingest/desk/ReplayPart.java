package org.driftward.ingest.desk;

import io.quarkus.arc.All;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.List;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.store.ReplayQueue;
import org.driftward.ingest.store.StoredCodes;

/** Replays what the desk asks for, each through the gate that refused it. */
@Singleton
public class ReplayPart extends RepeatingPart implements RolePart {

  private final ReplayQueue queue;
  private final StoredCodes codes;
  private final List<Gate> gates;

  public ReplayPart(ReplayQueue queue, StoredCodes codes, @All List<Gate> gates) {
    super("replays");
    this.queue = queue;
    this.codes = codes;
    this.gates = gates;
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public Duration run() {
    return queue.play(this::play) ? Duration.ZERO : A_MOMENT;
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
}
