package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.People;
import org.driftward.alerts.contract.People.Person;
import org.driftward.ground.store.Database;
import org.jspecify.annotations.Nullable;

/**
 * Whether somebody may be made answerable for a patient. Asked before the transaction that does so;
 * who ceases to be fit in between is found by {@link UnfitOwners}.
 */
@Singleton
public class Receivers {

  private final Database database;
  private final People people;

  public Receivers(Database database, People people) {
    this.database = database;
    this.people = people;
  }

  Optional<Person> find(String account) {
    return Optional.ofNullable(people.of(Set.of(account)).get(account));
  }

  /** In words that follow the name, or null if they may. */
  @Nullable String whyNot(@Nullable Person person, String account, String ward) {
    var unfit = People.whyNot(person, ward);
    if (unfit != null) {
      return unfit;
    }
    var roster = database.read(handle -> ShiftTable.roster(handle, Set.of(account), Set.of(ward)));
    if (roster.off(account)) {
      return "has gone off duty";
    }
    return roster.kept(ward) && !roster.on(account, ward)
        ? "is not on duty for ward " + ward
        : null;
  }

  @Nullable String whyNot(String account, String ward) {
    return whyNot(find(account).orElse(null), account, ward);
  }
}
