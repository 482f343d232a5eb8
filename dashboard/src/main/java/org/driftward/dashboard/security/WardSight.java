package org.driftward.dashboard.security;

import jakarta.enterprise.context.ApplicationScoped;
import org.driftward.dashboard.contract.Accounts;

/** Whether an account may see a ward at this moment, for what stays open longer than a call. */
@ApplicationScoped
public class WardSight {

  private final Accounts accounts;

  public WardSight(Accounts accounts) {
    this.accounts = accounts;
  }

  /** Blocking. */
  public boolean stillSees(String account, String ward) {
    return accounts.find(account).map(Identities::scope).filter(s -> s.sees(ward)).isPresent();
  }
}
