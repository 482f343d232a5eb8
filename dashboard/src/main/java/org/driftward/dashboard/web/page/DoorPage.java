package org.driftward.dashboard.web.page;

import io.quarkus.security.Authenticated;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.security.FormAuthenticationMechanism;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.screen.StartPage;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** Coming in, going out, and where to go first. */
@Path("/")
@ServedBy(Role.DASHBOARD)
@Page
@Blocking
@Produces(MediaType.TEXT_HTML)
public class DoorPage {

  private final SecurityIdentity identity;
  private final Viewer viewer;
  private final WardReader wards;
  private final Frames frames;
  private final Answers answers;

  DoorPage(
      SecurityIdentity identity, Viewer viewer, WardReader wards, Frames frames, Answers answers) {
    this.identity = identity;
    this.viewer = viewer;
    this.wards = wards;
    this.frames = frames;
    this.answers = answers;
  }

  /** Leads to the person's own start page. */
  @GET
  @Authenticated
  public Response start() {
    Visit visit = Visit.of(viewer);
    var seen = wards.wards(visit.scope()).stream().map(WardLine::ward).toList();
    return StartPage.of(visit.reader(), seen)
        .map(page -> Response.seeOther(URI.create(page)).build())
        .orElseGet(
            () ->
                answers.page(
                    200,
                    frames.of(visit, "/"),
                    "No ward yet",
                    "Your account is not assigned to a ward. Whoever runs Driftward in your"
                        + " hospital can change that."));
  }

  /** Any query at all says that a name or password was just refused. */
  @GET
  @Path("sign-in")
  @PermitAll
  public Response signIn(@Context UriInfo uri) {
    boolean refused = uri.getRequestUri().getRawQuery() != null;
    return identity.isAnonymous()
        ? Response.ok(Pages.signIn(frames.ofStranger("/sign-in"), refused)).build()
        : Response.seeOther(URI.create("/")).build();
  }

  @POST
  @Path("sign-out")
  @Authenticated
  public Response signOut() {
    FormAuthenticationMechanism.logout(identity);
    return Response.seeOther(URI.create("/sign-in")).build();
  }
}
