package org.driftward.dashboard.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.mapper.RowMapper;

/** {@link Accounts} in PostgreSQL. Names are kept and compared exactly as written. */
@ApplicationScoped
public class StoredAccounts implements Accounts {

  /** An account and the hash of its password. */
  record Kept(Account account, String hash) {
    @Override
    public String toString() {
      return "Kept[" + account.name() + "]";
    }
  }

  private static final RowMapper<Account> ROW =
      (row, context) ->
          new Account(
              row.getString("name"),
              row.getString("display_name"),
              Set.of((String[]) row.getArray("roles").getArray()),
              Set.of((String[]) row.getArray("wards").getArray()));

  private final Database database;
  private final Passwords passwords;

  public StoredAccounts(Database database, DashboardConfig config) {
    this.database = database;
    this.passwords = new Passwords(config.signIn().cost());
  }

  @Override
  public Optional<Account> find(String name) {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT * FROM dashboard.account WHERE name = :name")
                .bind("name", name)
                .map(ROW)
                .findOne());
  }

  /** Every account, by name. */
  public List<Account> list() {
    return database.read(
        handle ->
            handle.createQuery("SELECT * FROM dashboard.account ORDER BY name").map(ROW).list());
  }

  /** Those of these names that there are. */
  List<Account> among(Collection<String> names) {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT * FROM dashboard.account WHERE name = ANY (:names)")
                .bindArray("names", String.class, names.toArray())
                .map(ROW)
                .list());
  }

  @Override
  public boolean isEmpty() {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT NOT EXISTS (SELECT FROM dashboard.account)")
                .mapTo(Boolean.class)
                .one());
  }

  @Override
  public void put(Account account, String password) {
    var hash = passwords.hash(password);
    database.use(
        handle ->
            handle
                .createUpdate(
                    """
                    INSERT INTO dashboard.account (name, display_name, password_hash, roles, wards)
                    VALUES (:name, :displayName, :hash, :roles, :wards)
                    ON CONFLICT (name) DO UPDATE SET display_name = excluded.display_name,
                      password_hash = excluded.password_hash, roles = excluded.roles,
                      wards = excluded.wards
                    """)
                .bind("name", account.name())
                .bind("displayName", account.displayName())
                .bind("hash", hash)
                .bindArray("roles", String.class, sorted(account.roles()))
                .bindArray("wards", String.class, sorted(account.wards()))
                .execute());
  }

  /**
   * Changes everything but the password.
   *
   * @return false where there is no such account
   */
  public boolean update(Account account) {
    return database.read(
        handle ->
            handle
                    .createUpdate(
                        """
                        UPDATE dashboard.account
                        SET display_name = :displayName, roles = :roles, wards = :wards
                        WHERE name = :name
                        """)
                    .bind("name", account.name())
                    .bind("displayName", account.displayName())
                    .bindArray("roles", String.class, sorted(account.roles()))
                    .bindArray("wards", String.class, sorted(account.wards()))
                    .execute()
                == 1);
  }

  /**
   * @return false where there is no such account
   */
  public boolean changePassword(String name, String password) {
    var hash = passwords.hash(password);
    return database.read(
        handle ->
            handle.execute(
                    "UPDATE dashboard.account SET password_hash = ? WHERE name = ?", hash, name)
                == 1);
  }

  /**
   * @return false where there is no such account
   */
  public boolean delete(String name) {
    return database.read(
        handle -> handle.execute("DELETE FROM dashboard.account WHERE name = ?", name) == 1);
  }

  Optional<Kept> kept(String name) {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT * FROM dashboard.account WHERE name = :name")
                .bind("name", name)
                .map(
                    (row, context) ->
                        new Kept(ROW.map(row, context), row.getString("password_hash")))
                .findOne());
  }

  boolean match(String password, Optional<Kept> kept) {
    return passwords.match(password, kept.map(Kept::hash).orElse(null));
  }

  private static Object[] sorted(Set<String> words) {
    return words.stream().sorted().toArray();
  }
}
