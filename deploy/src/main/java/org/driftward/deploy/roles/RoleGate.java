package org.driftward.deploy.roles;

import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.Provider;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.ServedBy;

/** Answers 404 for what this process does not serve. */
@Provider
public class RoleGate implements ContainerRequestFilter {

  private final PlayedRoles roles;

  @Context ResourceInfo resource;

  @Inject
  RoleGate(PlayedRoles roles) {
    this.roles = roles;
  }

  @Override
  public void filter(ContainerRequestContext request) {
    var servedBy = resource.getResourceClass().getAnnotation(ServedBy.class);
    if (servedBy != null && !roles.plays(servedBy.value())) {
      request.abortWith(
          Response.status(Response.Status.NOT_FOUND)
              .type(Problem.MEDIA_TYPE)
              .entity(
                  Problem.of(
                      404,
                      "not-served-here",
                      "Not served here",
                      "This process does not play the role " + servedBy.value().word() + "."))
              .build());
    }
  }
}
