package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Optional;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.IntakeDesk;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** Where the forms of intake are sent: mending and replaying what was refused. */
@Path("/intake")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Blocking
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Produces(MediaType.TEXT_HTML)
public class MendPage {

  private static final String HERE = "/intake";
  private static final int OK = 200;
  private static final int CONFLICT = 409;
  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final IntakeDesk desk;
  private final Frames frames;
  private final Answers answers;

  MendPage(Viewer viewer, IntakeDesk desk, Frames frames, Answers answers) {
    this.viewer = viewer;
    this.desk = desk;
    this.frames = frames;
    this.answers = answers;
  }

  @POST
  @Path("replays")
  public Response replay(
      @BeanParam ReplayForm form, @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    var sight = new Sight(visit.account(), visit.scope());
    long asked =
        form.found()
            ? desk.replayAll(form.filter(frames.of(visit, HERE).zone()), sight)
            : form.ticked().stream().filter(id -> desk.replay(id, null, sight)).count();
    if (asked == 0) {
      return told(
          visit, UNPROCESSABLE, "Nothing was replayed: tick what to replay first.", scripted);
    }
    var words = Wording.count(asked, "replay is", "replays are") + " under way.";
    return scripted == null
        ? Response.seeOther(URI.create(HERE)).build()
        : told(visit, OK, words, scripted);
  }

  @POST
  @Path("refusals/{id}/replay")
  public Response mend(
      @PathParam("id") String id,
      @BeanParam MendForm form,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    var sight = new Sight(visit.account(), visit.scope());
    var refusal = desk.refusal(id, sight);
    if (refusal.isEmpty()) {
      return answers.unknown(visit, HERE);
    }
    Optional<Bytes> mended = form.original() ? Optional.empty() : form.mended(refusal.get());
    if (!form.original() && mended.isEmpty()) {
      return told(
          visit, UNPROCESSABLE, "These are no hexadecimal digits. Nothing was sent.", scripted);
    }
    if (!desk.replay(id, mended.orElse(null), sight)) {
      return told(visit, CONFLICT, "A replay of it is waiting already.", scripted);
    }
    return Answers.onward("/intake/refusals/" + id, scripted);
  }

  private Response told(Visit visit, int status, String words, @Nullable String scripted) {
    return answers.told(visit, HERE, status, words, scripted);
  }
}
