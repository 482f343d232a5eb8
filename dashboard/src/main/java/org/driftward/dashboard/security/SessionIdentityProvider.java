package org.driftward.dashboard.security;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TrustedAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import org.driftward.dashboard.contract.Accounts;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * Answers the session cookie. Reads the account anew each time, so a changed role or ward holds
 * with the next click and a removed account is out at once.
 */
@ApplicationScoped
public class SessionIdentityProvider implements IdentityProvider<TrustedAuthenticationRequest> {

  private final Accounts accounts;
  private final String cookieName;

  public SessionIdentityProvider(
      Accounts accounts,
      @ConfigProperty(name = "quarkus.http.auth.form.cookie-name") String cookieName) {
    this.accounts = accounts;
    this.cookieName = cookieName;
  }

  @Override
  public Class<TrustedAuthenticationRequest> getRequestType() {
    return TrustedAuthenticationRequest.class;
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      TrustedAuthenticationRequest request, AuthenticationRequestContext context) {
    var routing = HttpSecurityUtils.getRoutingContextAttribute(request);
    return context.runBlocking(
        () -> {
          var account = accounts.find(request.getPrincipal());
          if (account.isEmpty()) {
            endSession(routing);
            throw new AuthenticationFailedException("the account is gone");
          }
          return Identities.of(account.get());
        });
  }

  /** Otherwise the sign-in page would be refused for the same cookie, for ever. */
  private void endSession(@Nullable RoutingContext routing) {
    if (routing != null) {
      routing
          .response()
          .addCookie(Cookie.cookie(cookieName, "").setPath("/").setHttpOnly(true).setMaxAge(0));
    }
  }
}
