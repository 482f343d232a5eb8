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
import java.time.Clock;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Answer;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * Where the forms of the pages are sent. The answer is a sentence that is put into the page, or,
 * without a script, a page of its own.
 */
@Path("/episodes/{episode}/{action}")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Produces(MediaType.TEXT_HTML)
public class EpisodePage {

  private static final int OK = 200;
  private static final int CONFLICT = 409;
  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final EpisodeDesk desk;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  EpisodePage(Viewer viewer, EpisodeDesk desk, Frames frames, Answers answers, Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  /**
   * @param scripted whether the form was sent by the script of the page, which wants a fragment
   */
  @POST
  public Response act(
      @PathParam("episode") String episode,
      @PathParam("action") String word,
      @BeanParam ActionForm form,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    var found = desk.find(episode);
    var action = action(word);
    if (found.isEmpty() || action == null) {
      return answers.unknown(visit, "");
    }
    if (!visit.sees(found.get().ward())) {
      return answers.notYourWard(visit, "");
    }
    var request = form.request(episode, action, clock.instant());
    Answer answer = desk.act(request, visit.actor());
    return told(visit, found.get(), action, answer, scripted != null);
  }

  private Response told(
      Visit visit, Episode before, Action action, Answer answer, boolean scripted) {
    if (answer instanceof Answer.Done done) {
      var outcome = Outcome.done(action, done.episode(), clock.instant(), clock.getZone());
      return scripted
          ? fragment(OK, outcome)
          : Response.seeOther(URI.create("/encounters/" + before.encounter())).build();
    }
    if (answer instanceof Answer.NoLongerApplies late) {
      return refused(visit, CONFLICT, Outcome.tooLate(late.current(), late.why()), scripted);
    }
    if (answer instanceof Answer.Incomplete incomplete) {
      var whose = incomplete.field().equals("to") ? "whoever is to take over " : "";
      return refused(visit, UNPROCESSABLE, Outcome.incomplete(whose + incomplete.why()), scripted);
    }
    return answers.unknown(visit, "");
  }

  private Response refused(Visit visit, int status, Outcome outcome, boolean scripted) {
    return scripted
        ? fragment(status, outcome)
        : answers.page(status, frames.of(visit, ""), "Nothing was changed", outcome.words());
  }

  private static Response fragment(int status, Outcome outcome) {
    return Response.status(status).type(MediaType.TEXT_HTML).entity(Pages.outcome(outcome)).build();
  }

  private static @Nullable Action action(String word) {
    try {
      return Word.parse(Action.class, word);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }
}
