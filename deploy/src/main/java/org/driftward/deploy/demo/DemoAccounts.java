package org.driftward.deploy.demo;

import java.util.List;
import java.util.Set;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ingest.contract.AccountRole;

/** The people of the demo. Their password is printed at start and works in the demo only. */
public final class DemoAccounts {

  /** For every account of the demo. */
  public static final String PASSWORD = "twenty-beds-each";

  private static final List<Account> PEOPLE =
      List.of(
          person("charge.heron", "Imke Vandersloot", AccountRole.CHARGE, DemoHospital.SURGICAL),
          person("charge.kestrel", "Bram Oosterveld", AccountRole.CHARGE, DemoHospital.MEDICAL),
          person("bedside.heron", "Noor Halloran", AccountRole.BEDSIDE, DemoHospital.SURGICAL),
          person("bedside.kestrel", "Piet Marchbanks", AccountRole.BEDSIDE, DemoHospital.MEDICAL),
          person("response", "Yara Lindqvist", AccountRole.RESPONSE, "*"),
          person("manager", "Edda Thornquist", AccountRole.MANAGER, "*"),
          person("feeds", "Interface desk", AccountRole.INTEGRATION, "*"));

  private DemoAccounts() {}

  public static List<Account> people() {
    return PEOPLE;
  }

  static void create(Accounts accounts) {
    for (var person : PEOPLE) {
      if (accounts.find(person.name()).isEmpty()) {
        accounts.put(person, PASSWORD);
      }
    }
  }

  private static Account person(String name, String displayName, String role, String ward) {
    return new Account(name, displayName, Set.of(role), Set.of(ward));
  }
}
