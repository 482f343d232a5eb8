package org.driftward.alerts.contract;

import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/**
 * The people who have an account now. Kept by whoever keeps the accounts. Thread-safe, blocking;
 * not to be asked while a transaction is open, for it has connections of its own.
 */
public interface People {

  /**
   * @param account sign-in name
   * @param name as people know them
   * @param roles see {@code AccountRole}
   * @param sight the wards whose pages they may open
   */
  record Person(String account, String name, Set<String> roles, WardScope sight) {

    private static final Set<String> RESPONDERS =
        Set.of(AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE);

    public Person {
      Objects.requireNonNull(account, "account");
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(sight, "sight");
      roles = Set.copyOf(roles);
    }

    /** Whether the person answers for patients at all. */
    public boolean responds() {
      return !Collections.disjoint(roles, RESPONDERS);
    }
  }

  /** By sign-in name; no entry for a name that nobody has. */
  Map<String, Person> of(Collection<String> accounts);

  /**
   * Why somebody cannot answer for the patients of a ward, in words that follow the name, or null
   * if they can.
   *
   * @param person or null where nobody has the name
   * @param ward or {@link Shift#EVERY_WARD} for whichever wards they see
   */
  static @Nullable String whyNot(@Nullable Person person, String ward) {
    if (person == null) {
      return "has no account";
    }
    if (!person.responds()) {
      return "has no role that answers for patients";
    }
    boolean sees = ward.equals(Shift.EVERY_WARD) || person.sight().sees(ward);
    return sees ? null : "may not open the pages of ward " + ward;
  }
}
