package org.driftward.dashboard.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** The wards and their boards. */
@Path("/api/wards")
@ServedBy(Role.DASHBOARD)
@Authenticated
public class WardResource {

  /** {@code GET /api/wards}: those of the account that have patients, and those assigned to it. */
  record WardsJson(List<WardLine> wards) {}

  private static final JsonFormat<WardsJson> WARDS = JsonFormat.of(WardsJson.class);

  private final WardReader reader;
  private final Viewer viewer;

  public WardResource(WardReader reader, Viewer viewer) {
    this.reader = reader;
    this.viewer = viewer;
  }

  @GET
  @Produces(MediaType.APPLICATION_JSON)
  public Response wards() {
    return Answers.json(WARDS.write(new WardsJson(reader.wards(viewer.scope()))));
  }

  @GET
  @Path("/{ward}/board")
  @Produces({MediaType.APPLICATION_JSON, "application/problem+json"})
  public Response board(@PathParam("ward") String ward, @Context Request request) {
    if (!viewer.sees(ward)) {
      return Answers.otherWard();
    }
    var board = reader.board(ward);
    return Answers.patientData(request, board.asOf(), asOf -> BoardJson.write(board, asOf));
  }
}
