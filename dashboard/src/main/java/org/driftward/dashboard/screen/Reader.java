package org.driftward.dashboard.screen;

import java.util.Set;
import org.driftward.ingest.contract.AccountRole;

/**
 * The person in front of the page, as far as it decides what the page offers. What they may really
 * do is decided again where it is done.
 *
 * @param account sign-in name
 * @param roles see {@link AccountRole}
 */
public record Reader(String account, Set<String> roles) {

  public Reader {
    roles = Set.copyOf(roles);
  }

  /** Whether the person looks after patients, and so may act on episodes. */
  public boolean cares() {
    return has(AccountRole.BEDSIDE) || has(AccountRole.CHARGE) || has(AccountRole.RESPONSE);
  }

  /** Whether the person may hold and close. */
  public boolean decides() {
    return has(AccountRole.CHARGE) || has(AccountRole.RESPONSE);
  }

  /** Whether the person sees how the wards have done. */
  public boolean answersForWards() {
    return has(AccountRole.MANAGER) || has(AccountRole.ADMIN);
  }

  /** Whether the person looks after the feeds. */
  public boolean integrates() {
    return has(AccountRole.INTEGRATION) || has(AccountRole.ADMIN);
  }

  public boolean has(String role) {
    return roles.contains(role);
  }
}
