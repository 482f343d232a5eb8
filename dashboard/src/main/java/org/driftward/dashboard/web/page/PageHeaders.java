package org.driftward.dashboard.web.page;

import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * What every page says to the browser: run nothing and load nothing but our own files, and keep no
 * copy of what concerns a patient.
 */
class PageHeaders {

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  @Page
  @ServerResponseFilter
  void protect(ContainerResponseContext response) {
    var headers = response.getHeaders();
    headers.putSingle("Content-Security-Policy", POLICY);
    headers.putSingle(HttpHeaders.CACHE_CONTROL, "no-store");
  }
}
