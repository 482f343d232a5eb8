package org.driftward.ingest.contract;

/** The roles of an account, as constants that annotations can use. */
public final class AccountRole {
  public static final String BEDSIDE = "bedside";
  public static final String CHARGE = "charge";
  public static final String RESPONSE = "response";
  public static final String MANAGER = "manager";
  public static final String INTEGRATION = "integration";
  public static final String ADMIN = "admin";

  private AccountRole() {}
}
