package org.driftward.ingest.contract;

import java.util.Set;

/**
 * The wards that an account sees. Every edge asks it before it answers about a ward or an
 * encounter.
 *
 * @param all whether the account sees every ward, whatever {@code wards} lists
 */
public record WardScope(Set<String> wards, boolean all) {

  /** Name of the security identity's attribute that holds the scope. */
  public static final String ATTRIBUTE = "driftward.wards";

  public static final WardScope NONE = new WardScope(Set.of(), false);
  public static final WardScope EVERY_WARD = new WardScope(Set.of(), true);

  public WardScope {
    wards = Set.copyOf(wards);
  }

  public static WardScope of(Set<String> wards) {
    return new WardScope(wards, false);
  }

  public boolean sees(String ward) {
    return all || wards.contains(ward);
  }
}
