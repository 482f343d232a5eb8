package org.driftward.dashboard.security;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.charset.StandardCharsets;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Problem;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refuses what {@link SameOrigin} does not allow, before anybody is signed in. */
@ApplicationScoped
public class SameOriginFilter {

  /** Above the priority of authentication, so that it comes first. */
  private static final int BEFORE_AUTHENTICATION = 250;

  private static final Problem FOREIGN =
      Problem.of(
          403,
          "foreign-origin",
          "A request that changes something must come from our own pages",
          "programs sign in with HTTP Basic, or send the header " + SameOrigin.OWN_HEADER);

  private final String cookieName;
  private final String answer;

  public SameOriginFilter(
      @ConfigProperty(name = "quarkus.http.auth.form.cookie-name") String cookieName) {
    this.cookieName = cookieName;
    this.answer = new String(JsonFormat.of(Problem.class).write(FOREIGN), StandardCharsets.UTF_8);
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, BEFORE_AUTHENTICATION);
  }

  private void check(RoutingContext context) {
    var request = context.request();
    if (of(request).allowed()) {
      context.next();
    } else {
      context
          .response()
          .setStatusCode(FOREIGN.status())
          .putHeader("Content-Type", Problem.MEDIA_TYPE)
          .end(answer);
    }
  }

  private SameOrigin of(HttpServerRequest request) {
    var authority = request.authority();
    return new SameOrigin(
        request.method().name(),
        request.getHeader("Sec-Fetch-Site"),
        request.getHeader("Origin"),
        authority == null ? null : authority.toString(),
        request.getCookie(cookieName) != null,
        request.getHeader(SameOrigin.OWN_HEADER) != null);
  }
}
