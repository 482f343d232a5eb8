package org.driftward.dashboard.web.api;

import io.quarkus.security.Authenticated;
import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.account.AccountRules;
import org.driftward.dashboard.account.SignIn;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Who may sign in: for administrators, and everybody's own password. */
@Path("/api/accounts")
@ServedBy(Role.DASHBOARD)
@Authenticated
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
public class AccountResource {

  /** {@code GET /api/accounts}, by name; never a password or its hash. */
  record AccountsJson(List<Account> accounts) {}

  /** The body of {@code PUT /api/accounts/{name}/password}. */
  record PasswordInput(@Nullable String current, @Nullable String next) {
    @Override
    public String toString() {
      return "PasswordInput[redacted]";
    }
  }

  private static final Logger LOG = Logger.getLogger(AccountResource.class);
  private static final JsonFormat<AccountsJson> ACCOUNTS = JsonFormat.of(AccountsJson.class);
  private static final JsonFormat<AccountInput> INPUT = JsonFormat.of(AccountInput.class);
  private static final JsonFormat<PasswordInput> PASSWORD = JsonFormat.of(PasswordInput.class);

  private final StoredAccounts accounts;
  private final SignIn signIn;
  private final Viewer viewer;

  public AccountResource(StoredAccounts accounts, SignIn signIn, Viewer viewer) {
    this.accounts = accounts;
    this.signIn = signIn;
    this.viewer = viewer;
  }

  @GET
  @RolesAllowed(AccountRole.ADMIN)
  public Response list() {
    return Answers.json(ACCOUNTS.write(new AccountsJson(accounts.list())));
  }

  /** Creates or changes an account. An administrator cannot take that role from themselves. */
  @PUT
  @Path("/{name}")
  @RolesAllowed(AccountRole.ADMIN)
  @Consumes(MediaType.APPLICATION_JSON)
  public Response put(@PathParam("name") String name, byte[] body) {
    AccountInput input;
    try {
      input = INPUT.read(body);
    } catch (MalformedException e) {
      return malformed(e);
    }
    var account = input.account(name);
    var faults = new ArrayList<Fault>(AccountRules.check(account));
    var password = input.password();
    if (password != null) {
      faults.addAll(AccountRules.checkPassword("/password", password, name));
    } else if (accounts.find(name).isEmpty()) {
      faults.add(new Fault("/password", "required", "a new account needs a password"));
    }
    if (name.equals(viewer.account()) && !account.roles().contains(AccountRole.ADMIN)) {
      faults.add(new Fault("/roles", "own-role", "one cannot take the role admin from oneself"));
    }
    if (!faults.isEmpty()) {
      return Answers.refused(faults.toArray(Fault[]::new));
    }
    if (password == null) {
      accounts.update(account);
    } else {
      accounts.put(account, password);
    }
    LOG.infof("Account %s was changed by %s", name, viewer.account());
    return Response.noContent().build();
  }

  @DELETE
  @Path("/{name}")
  @RolesAllowed(AccountRole.ADMIN)
  public Response delete(@PathParam("name") String name) {
    if (name.equals(viewer.account())) {
      return Answers.refused(new Fault("", "own-account", "one cannot remove one's own account"));
    }
    if (!accounts.delete(name)) {
      return unknown();
    }
    LOG.infof("Account %s was removed by %s", name, viewer.account());
    return Response.noContent().build();
  }

  /** Changes one's own password; an administrator sets another's with the account. */
  @PUT
  @Path("/{name}/password")
  @Consumes(MediaType.APPLICATION_JSON)
  public Response password(
      @PathParam("name") String name, byte[] body, @Context HttpServerRequest request) {
    if (!name.equals(viewer.account())) {
      return Answers.problem(
          Problem.of(403, "other-account", "One changes only one's own password here", null));
    }
    PasswordInput input;
    try {
      input = PASSWORD.read(body);
    } catch (MalformedException e) {
      return malformed(e);
    }
    var current = input.current() == null ? "" : input.current();
    var next = input.next() == null ? "" : input.next();
    var address = request.remoteAddress().hostAddress();
    if (!(signIn.attempt(name, current, address) instanceof SignIn.Answer.Welcome)) {
      return Answers.refused(new Fault("/current", "refused", "this is not the current password"));
    }
    var faults = AccountRules.checkPassword("/next", next, name);
    if (!faults.isEmpty()) {
      return Answers.refused(faults.toArray(Fault[]::new));
    }
    return accounts.changePassword(name, next) ? Response.noContent().build() : unknown();
  }

  private static Response malformed(MalformedException e) {
    return Answers.refused(new Fault("", "json", e.getMessage()));
  }

  private static Response unknown() {
    return Answers.problem(Problem.of(404, "unknown-account", "There is no such account", null));
  }
}
