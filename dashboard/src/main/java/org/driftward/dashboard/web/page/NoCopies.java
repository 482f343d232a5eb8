package org.driftward.dashboard.web.page;

import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Tells browsers and what lies between to keep no copy of what concerns a patient. */
class NoCopies {

  @Page
  @ServerResponseFilter
  void protect(ContainerResponseContext response) {
    response.getHeaders().putSingle(HttpHeaders.CACHE_CONTROL, "no-store");
  }
}
