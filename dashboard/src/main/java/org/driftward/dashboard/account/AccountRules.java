package org.driftward.dashboard.account;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Fault;

/** What an account and a password must be. Pure. */
public final class AccountRules {

  /**
   * NIST SP 800-63B asks for at least 8 characters beside a second factor and 15 without one, and
   * for no rules of composition (from memory). A ward's shared work places make long ones a burden,
   * guessing is slowed: 12.
   */
  static final int LEAST_CHARACTERS = 12;

  private static final Set<String> ROLES =
      Set.of(
          AccountRole.BEDSIDE,
          AccountRole.CHARGE,
          AccountRole.RESPONSE,
          AccountRole.MANAGER,
          AccountRole.INTEGRATION,
          AccountRole.ADMIN);

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9._@-]{0,63}");

  private AccountRules() {}

  public static List<Fault> check(Account account) {
    var faults = new ArrayList<Fault>();
    if (!NAME.matcher(account.name()).matches()) {
      faults.add(
          new Fault("/name", "name", "a sign-in name is 1 to 64 of a-z 0-9 . _ @ - in lower case"));
    }
    if (account.displayName().isBlank()) {
      faults.add(
          new Fault("/displayName", "required", "the person's or program's name is missing"));
    }
    if (account.roles().isEmpty() || !ROLES.containsAll(account.roles())) {
      faults.add(
          new Fault(
              "/roles", "role", "roles are one or more of " + ROLES.stream().sorted().toList()));
    }
    if (account.wards().stream().anyMatch(String::isBlank)) {
      faults.add(new Fault("/wards", "ward", "a ward has a name; * stands for every ward"));
    }
    return faults;
  }

  /**
   * @param pointer where the password stands in the request
   */
  public static List<Fault> checkPassword(String pointer, String password, String account) {
    var faults = new ArrayList<Fault>();
    if (password.codePointCount(0, password.length()) < LEAST_CHARACTERS) {
      faults.add(
          new Fault(
              pointer, "too-short", "a password has at least " + LEAST_CHARACTERS + " characters"));
    }
    if (password.getBytes(StandardCharsets.UTF_8).length > Passwords.MOST_BYTES) {
      faults.add(
          new Fault(
              pointer, "too-long", "a password has at most " + Passwords.MOST_BYTES + " bytes"));
    }
    if (password.toLowerCase(Locale.ROOT).contains(account.toLowerCase(Locale.ROOT))) {
      faults.add(new Fault(pointer, "guessable", "a password does not contain the sign-in name"));
    }
    return faults;
  }
}
