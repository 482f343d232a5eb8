package org.driftward.dashboard.security;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.UsernamePasswordAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import org.driftward.dashboard.account.SignIn;

/** Answers the sign-in form and HTTP Basic. The hashing runs on a worker thread. */
@ApplicationScoped
public class PasswordIdentityProvider
    implements IdentityProvider<UsernamePasswordAuthenticationRequest> {

  private static final String UNKNOWN_ADDRESS = "unknown";

  private final SignIn signIn;

  public PasswordIdentityProvider(SignIn signIn) {
    this.signIn = signIn;
  }

  @Override
  public Class<UsernamePasswordAuthenticationRequest> getRequestType() {
    return UsernamePasswordAuthenticationRequest.class;
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      UsernamePasswordAuthenticationRequest request, AuthenticationRequestContext context) {
    var address = address(request);
    return context.runBlocking(() -> attempt(request, address));
  }

  private SecurityIdentity attempt(UsernamePasswordAuthenticationRequest request, String address) {
    var password = new String(request.getPassword().getPassword());
    var answer = signIn.attempt(request.getUsername(), password, address);
    if (answer instanceof SignIn.Answer.Welcome welcome) {
      return Identities.of(welcome.account());
    }
    throw new AuthenticationFailedException(
        answer instanceof SignIn.Answer.Wait ? "too many failures" : "refused");
  }

  private static String address(UsernamePasswordAuthenticationRequest request) {
    var routing = HttpSecurityUtils.getRoutingContextAttribute(request);
    var remote = routing == null ? null : routing.request().remoteAddress();
    var host = remote == null ? null : remote.hostAddress();
    return host == null ? UNKNOWN_ADDRESS : host;
  }
}
