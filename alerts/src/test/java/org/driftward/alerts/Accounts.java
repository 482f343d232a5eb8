package org.driftward.alerts;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.People.Person;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.WardScope;

/**
 * The accounts of a test: any name is a charge nurse of every ward, until the test says otherwise.
 */
public final class Accounts implements org.driftward.alerts.contract.People {

  private final Map<String, Person> others = new ConcurrentHashMap<>();
  private final Set<String> gone = ConcurrentHashMap.newKeySet();

  public void put(String account, String name, String role, WardScope sight) {
    gone.remove(account);
    others.put(account, new Person(account, name, Set.of(role), sight));
  }

  public void delete(String account) {
    gone.add(account);
  }

  @Override
  public Map<String, Person> of(Collection<String> accounts) {
    return accounts.stream()
        .distinct()
        .filter(account -> !gone.contains(account))
        .collect(Collectors.toMap(Function.identity(), this::person, (a, b) -> a, HashMap::new));
  }

  private Person person(String account) {
    return others.getOrDefault(
        account, new Person(account, account, Set.of(AccountRole.CHARGE), WardScope.EVERY_WARD));
  }
}
