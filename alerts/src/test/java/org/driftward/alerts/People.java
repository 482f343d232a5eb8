package org.driftward.alerts;

import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.ingest.contract.AccountRole;

/** Invented people who act in tests. */
public final class People {
  public static final Actor BEDSIDE = new Actor("n.one", "Nurse One", Set.of(AccountRole.BEDSIDE));
  public static final Actor CHARGE = new Actor("c.two", "Charge Two", Set.of(AccountRole.CHARGE));
  public static final Actor RESPONSE =
      new Actor("r.three", "Response Three", Set.of(AccountRole.RESPONSE));
  public static final Actor MANAGER =
      new Actor("m.four", "Manager Four", Set.of(AccountRole.MANAGER));

  private People() {}
}
