package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.driftward.dashboard.screen.codes.CodeScreen;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeDesk;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** One code of a feed: what it means, and the messages that wait for somebody to say so. */
@Path("/intake/codes/{id}")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class CodePage {

  private static final String HERE = "/intake";
  private static final int CONFLICT = 409;
  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final CodeDesk desk;
  private final Catalogue catalogue;
  private final Frames frames;
  private final Answers answers;

  CodePage(Viewer viewer, CodeDesk desk, Catalogue catalogue, Frames frames, Answers answers) {
    this.viewer = viewer;
    this.desk = desk;
    this.catalogue = catalogue;
    this.frames = frames;
    this.answers = answers;
  }

  /**
   * @param finding that shall be its meaning, so that the form asks what this finding needs
   */
  @GET
  public Response code(@PathParam("id") String id, @RestQuery @Nullable String finding) {
    Visit visit = Visit.of(viewer);
    return desk.open(id, sight(visit))
        .map(
            opened ->
                CodeScreen.of(opened, RefusalQuery.words(finding), catalogue, visit.scope().all()))
        .map(screen -> IntakePages.code(frames.of(visit, HERE), screen))
        .map(page -> Response.ok(page).build())
        .orElseGet(() -> answers.unknown(visit, HERE));
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response map(
      @PathParam("id") String id,
      @BeanParam MeantForm form,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    var why = mapped(id, form, visit);
    if (why.isPresent()) {
      return told(visit, UNPROCESSABLE, "Nothing was changed: " + why.get() + ".", scripted);
    }
    if (form.replay != null) {
      desk.replay(id, sight(visit));
    }
    return back(id, scripted);
  }

  private Optional<String> mapped(String id, MeantForm form, Visit visit) {
    try {
      return desk.map(id, form.meant(), sight(visit));
    } catch (IllegalArgumentException e) {
      return Optional.of(String.valueOf(e.getMessage()));
    }
  }

  @POST
  @Path("/take-back")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response takeBack(
      @PathParam("id") String id, @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    return desk.takeBack(id, sight(visit))
        ? back(id, scripted)
        : told(visit, CONFLICT, "There is nothing to take back any more.", scripted);
  }

  @POST
  @Path("/replay")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response replay(
      @PathParam("id") String id, @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    return desk.replay(id, sight(visit)) > 0
        ? back(id, scripted)
        : told(visit, CONFLICT, "Every held message is being replayed already.", scripted);
  }

  private static Sight sight(Visit visit) {
    return new Sight(visit.account(), visit.scope());
  }

  private static Response back(String id, @Nullable String scripted) {
    return Answers.onward("/intake/codes/" + id, scripted);
  }

  private Response told(Visit visit, int status, String words, @Nullable String scripted) {
    return answers.told(visit, HERE, status, words, scripted);
  }
}
