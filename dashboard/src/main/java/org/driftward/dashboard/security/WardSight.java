package org.driftward.dashboard.security;

import jakarta.enterprise.context.ApplicationScoped;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.ingest.contract.WardScope;

/** Whether an account may see a ward at this moment, for what stays open longer than a call. */
@ApplicationScoped
public class WardSight {

  private final Accounts accounts;

  public WardSight(Accounts accounts) {
    this.accounts = accounts;
  }

  /** The wards that the account sees now; none once it is gone. Blocking. */
  public WardScope of(String account) {
    return accounts.find(account).map(Accounts.Account::scope).orElse(WardScope.NONE);
  }

  /** Blocking. */
  public boolean stillSees(String account, String ward) {
    return of(account).sees(ward);
  }
}
