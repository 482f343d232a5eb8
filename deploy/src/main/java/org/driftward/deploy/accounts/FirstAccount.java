package org.driftward.deploy.accounts;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Singleton;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Set;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.deploy.roles.PlayedRoles;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;

/**
 * Makes {@code admin} when there is no account at all. A password that nobody chose is shown once,
 * on the terminal and never in the log.
 */
@Singleton
public class FirstAccount {

  private static final Account ADMIN =
      new Account("admin", "Administrator", Set.of(AccountRole.ADMIN), Set.of("*"));
  private static final int RANDOM_BYTES = 15;

  void open(
      @Observes StartupEvent event,
      PlayedRoles roles,
      Instance<Accounts> accounts,
      DeploySettings settings) {
    if (roles.plays(Role.DASHBOARD) && accounts.isResolvable() && accounts.get().isEmpty()) {
      accounts.get().put(ADMIN, settings.adminPassword().orElseGet(FirstAccount::shownOnce));
    }
  }

  private static String shownOnce() {
    var bytes = new byte[RANDOM_BYTES];
    new SecureRandom().nextBytes(bytes);
    var password = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    System.out.println("First account: admin, password " + password + " (shown once)");
    return password;
  }
}
