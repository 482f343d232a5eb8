package org.driftward.dashboard.contract;

import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.WardScope;

/** The accounts of the hospital, kept in PostgreSQL. Thread-safe, blocking. */
public interface Accounts {

  /**
   * @param name sign-in name
   * @param displayName as people know them
   * @param roles see {@code AccountRole}
   * @param wards assigned wards; {@code *} for every ward
   */
  record Account(String name, String displayName, Set<String> roles, Set<String> wards) {
    public Account {
      roles = Set.copyOf(roles);
      wards = Set.copyOf(wards);
    }

    public WardScope scope() {
      return wards.contains("*") ? WardScope.EVERY_WARD : WardScope.of(wards);
    }
  }

  Optional<Account> find(String name);

  boolean isEmpty();

  /** Creates the account, or replaces roles, wards and password of an existing one. */
  void put(Account account, String password);
}
