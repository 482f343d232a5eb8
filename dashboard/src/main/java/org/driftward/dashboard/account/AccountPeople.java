package org.driftward.dashboard.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.People;
import org.driftward.dashboard.contract.Accounts.Account;

/** The people who have an account, as alerts asks for them. */
@ApplicationScoped
public class AccountPeople implements People {

  private final StoredAccounts accounts;

  public AccountPeople(StoredAccounts accounts) {
    this.accounts = accounts;
  }

  @Override
  public Map<String, Person> of(Collection<String> names) {
    return accounts.among(names).stream()
        .map(AccountPeople::person)
        .collect(Collectors.toMap(Person::account, Function.identity()));
  }

  private static Person person(Account account) {
    return new Person(account.name(), account.displayName(), account.roles(), account.scope());
  }
}
