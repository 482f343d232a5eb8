package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.DateTimeException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.alerts.contract.ShiftDesk.Answer;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.StaffScreen;
import org.driftward.dashboard.screen.StartPage;
import org.driftward.dashboard.screen.TimeOfDay;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** Who is on duty on a ward: come on, take over, go off. */
@Path("/wards/{ward}/staff")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE, AccountRole.ADMIN})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class StaffPage {

  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final ShiftDesk desk;
  private final WardReader wards;
  private final Accounts accounts;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  StaffPage(
      Viewer viewer,
      ShiftDesk desk,
      WardReader wards,
      Accounts accounts,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.wards = wards;
    this.accounts = accounts;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response staff(@PathParam("ward") String ward) {
    Visit visit = Visit.of(viewer);
    return visit.sees(ward) ? page(visit, ward, 200, null) : answers.notYourWard(visit, here(ward));
  }

  /** The fields of the form; an empty one is left out. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response begin(
      @PathParam("ward") String ward,
      @RestForm @Nullable String duty,
      @RestForm @Nullable String account,
      @RestForm("bed") @Nullable List<String> beds,
      @RestForm @Nullable String until,
      @RestForm @Nullable String takesOver,
      @BeanParam ContactForm told) {
    Visit visit = Visit.of(viewer);
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here(ward));
    }
    var whose = account == null || account.isBlank() ? visit.account() : account.strip();
    var name = whose.equals(visit.account()) ? Optional.of(visit.name()) : nameOf(whose);
    if (name.isEmpty()) {
      return refused(visit, ward, "there is no account " + whose);
    }
    var unusable = told.fault();
    if (unusable != null) {
      return refused(visit, ward, unusable);
    }
    try {
      var begin = begin(ward, duty, whose, name.get(), beds, until, takesOver, told.contact());
      return told(visit, ward, desk.begin(begin, visit.actor()));
    } catch (DateTimeException e) {
      return refused(visit, ward, "the end of duty is a time of day");
    } catch (IllegalArgumentException e) {
      return refused(visit, ward, "the duty is not one that is known");
    }
  }

  private Begin begin(
      String ward,
      @Nullable String duty,
      String account,
      String name,
      @Nullable List<String> beds,
      @Nullable String until,
      @Nullable String takesOver,
      @Nullable Contact contact) {
    var over = takesOver == null || takesOver.isBlank() ? null : desk.find(takesOver).orElse(null);
    var kind = over == null ? Word.parse(Duty.class, String.valueOf(duty)) : over.duty();
    var chosen = over == null ? Set.copyOf(beds == null ? List.of() : beds) : over.beds();
    return new Begin(
        over == null ? ward : over.ward(),
        kind,
        account,
        name,
        kind == Duty.BEDSIDE ? chosen : Set.of(),
        TimeOfDay.next(until, clock.instant(), clock.getZone()),
        over == null ? null : over.id(),
        contact);
  }

  @POST
  @Path("{shift}/end")
  public Response end(@PathParam("ward") String ward, @PathParam("shift") String shift) {
    Visit visit = Visit.of(viewer);
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here(ward));
    }
    var known = desk.find(shift).filter(one -> one.on(ward));
    return known.isEmpty()
        ? answers.unknown(visit, here(ward))
        : told(visit, ward, desk.end(shift, visit.actor()));
  }

  private Response told(Visit visit, String ward, Answer answer) {
    if (answer instanceof Answer.Done) {
      return Response.seeOther(URI.create(here(ward))).build();
    }
    if (answer instanceof Answer.Incomplete incomplete) {
      return refused(visit, ward, incomplete.field() + " " + incomplete.why());
    }
    if (answer instanceof Answer.NotAllowed notAllowed) {
      return refused(visit, ward, notAllowed.why());
    }
    return refused(visit, ward, "that duty has ended already");
  }

  private Response refused(Visit visit, String ward, String why) {
    return page(visit, ward, UNPROCESSABLE, Outcome.incomplete(why));
  }

  private Response page(Visit visit, String ward, int status, @Nullable Outcome outcome) {
    var board = wards.board(ward);
    List<Shift> running = desk.running(ward);
    var screen = StaffScreen.of(board, running, visit.reader(), clock.getZone(), outcome);
    var frame = frames.of(visit, here(ward)).at(board.asOf());
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.staff(frame, screen))
        .build();
  }

  private Optional<String> nameOf(String account) {
    return accounts.find(account).map(Accounts.Account::displayName);
  }

  private static String here(String ward) {
    return StartPage.board(ward) + "/staff";
  }
}
