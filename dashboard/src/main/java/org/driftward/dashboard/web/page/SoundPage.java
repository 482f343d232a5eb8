package org.driftward.dashboard.web.page;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.Response.Status;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** Where a page says that it has sounded an alarm. */
@Path("/sounds/{notice}")
@ServedBy(Role.DASHBOARD)
@Authenticated
@Blocking
public class SoundPage {

  private final Viewer viewer;
  private final DeliveryDesk desk;

  SoundPage(Viewer viewer, DeliveryDesk desk) {
    this.viewer = viewer;
    this.desk = desk;
  }

  @POST
  public Response sounded(@PathParam("notice") long notice) {
    Visit visit = Visit.of(viewer);
    boolean kept = desk.sounded(notice, visit.actor(), visit.wards());
    return Response.status(kept ? Status.NO_CONTENT : Status.NOT_FOUND).build();
  }
}
