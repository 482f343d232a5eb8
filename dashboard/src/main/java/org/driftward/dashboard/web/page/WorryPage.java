package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
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
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.WorryDesk;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.Reached;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** One touch for somebody at the bedside who is worried; no number is needed. */
@Path("/encounters/{encounter}/worry")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Produces(MediaType.TEXT_HTML)
public class WorryPage {

  private static final int LONGEST_NOTE = 2_000;

  private final Viewer viewer;
  private final WardReader wards;
  private final WorryDesk desk;
  private final DeliveryDesk deliveries;
  private final Answers answers;
  private final Clock clock;

  WorryPage(
      Viewer viewer,
      WardReader wards,
      WorryDesk desk,
      DeliveryDesk deliveries,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.wards = wards;
    this.desk = desk;
    this.deliveries = deliveries;
    this.answers = answers;
    this.clock = clock;
  }

  /**
   * @param scripted whether the form was sent by the script of the page, which wants a fragment
   */
  @POST
  public Response worry(
      @PathParam("encounter") String encounter,
      @RestForm @Nullable String note,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    var view = wards.patient(encounter);
    if (view.isEmpty()) {
      return answers.unknown(visit, "");
    }
    if (!visit.sees(view.get().encounter().ward())) {
      return answers.notYourWard(visit, "");
    }
    var words = note == null ? "" : note.strip();
    if (words.length() > LONGEST_NOTE) {
      words = words.substring(0, LONGEST_NOTE);
    }
    var episode = desk.worry(encounter, words, visit.actor());
    if (scripted == null) {
      return Response.seeOther(URI.create("/encounters/" + encounter)).build();
    }
    var outcome =
        episode
            .map(this::called)
            .orElseGet(() -> Outcome.incomplete("the patient is no longer in the house"));
    return Response.ok(Pages.outcome(outcome)).build();
  }

  private Outcome called(Episode episode) {
    var now = clock.instant();
    var zone = clock.getZone();
    var due = episode.due();
    var reached = Reached.of(episode, deliveries.present(episode.id()), now, zone).words();
    return new Outcome(
        true,
        "Your worry is recorded. "
            + (reached.isEmpty() ? "" : Wording.sentence(reached) + ".")
            + (due == null
                ? ""
                : " Without an answer the next call is at %s."
                    .formatted(Wording.time(due, now, zone))));
  }
}
