package org.driftward.dashboard.security;

import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import org.jspecify.annotations.Nullable;

/**
 * Says to a program that it has to sign in: 401, where a person's browser is led to the sign-in
 * page. Signs nobody in itself. A browser's script gets no {@code WWW-Authenticate}, lest the
 * browser ask for a password in a window of its own; one of htmx is told where to go.
 */
@ApplicationScoped
public class ProgramChallenge implements HttpAuthenticationMechanism {

  private static final int UNAUTHORIZED = 401;
  private static final int BEFORE_FORM_AND_BASIC = 10_000;

  @Override
  public Uni<SecurityIdentity> authenticate(
      RoutingContext context, IdentityProviderManager identityProviderManager) {
    return Uni.createFrom().nullItem();
  }

  @Override
  public Uni<ChallengeData> getChallenge(RoutingContext context) {
    return Uni.createFrom().item(challenge(context));
  }

  private static @Nullable ChallengeData challenge(RoutingContext context) {
    var request = context.request();
    if (request.getHeader("HX-Request") != null) {
      return new ChallengeData(UNAUTHORIZED, "HX-Redirect", "/sign-in");
    }
    if (!forPrograms(context.normalizedPath())) {
      return null;
    }
    return request.getHeader("Sec-Fetch-Mode") != null
        ? new ChallengeData(UNAUTHORIZED)
        : new ChallengeData(UNAUTHORIZED, "WWW-Authenticate", "Basic realm=\"Driftward\"");
  }

  private static boolean forPrograms(String path) {
    return path.startsWith("/api/") || path.equals("/fhir") || path.startsWith("/fhir/");
  }

  @Override
  public int getPriority() {
    return BEFORE_FORM_AND_BASIC;
  }
}
