package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.entry.EntryScreen;
import org.driftward.dashboard.screen.entry.PreviewScreen;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Previews;
import org.driftward.dashboard.web.Previews.Foresight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.contract.ScoreGuides;
import org.jspecify.annotations.Nullable;

/**
 * Bedside entry. With its script the page sends what it records to {@code POST /api/assessments}
 * like any other sender; without one it is a plain form that is sent here.
 */
@Path("/encounters/{encounter}/assess")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class AssessPage {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);

  private final Viewer viewer;
  private final Patients patients;
  private final Previews previews;
  private final Accounts accounts;
  private final Scribe scribe;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;
  private final Catalogue catalogue;
  private final Findings findings;
  private final ScoreGuides guides;

  AssessPage(
      Viewer viewer,
      Patients patients,
      Previews previews,
      Accounts accounts,
      Scribe scribe,
      Frames frames,
      Answers answers,
      Clock clock,
      Catalogue catalogue,
      ScoreGuides guides) {
    this.viewer = viewer;
    this.patients = patients;
    this.previews = previews;
    this.accounts = accounts;
    this.scribe = scribe;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
    this.catalogue = catalogue;
    this.findings = new Findings(catalogue);
    this.guides = guides;
  }

  /**
   * @param correct id of an assessment of this stay to correct, or null for a new one
   * @param only the one region to record, or null for the whole examination
   */
  @GET
  public Response form(
      @PathParam("encounter") String encounter,
      @QueryParam("correct") @Nullable String correct,
      @QueryParam("only") @Nullable String only) {
    Visit visit = Visit.of(viewer);
    String here = here(encounter);
    var sight = patients.record(encounter, viewer);
    if (!(sight instanceof Sight.Shown<StayRecord> shown)) {
      return hidden(visit, sight, here);
    }
    var record = shown.view();
    var elsewhere = Answers.ofSurvivor(record.view().encounter(), "assess");
    if (elsewhere != null) {
      return elsewhere;
    }
    var frame = frames.of(visit, here).at(record.view().asOf());
    var earlier = correct == null ? null : record.find(correct).orElse(null);
    if (correct != null && (earlier == null || earlier.retracted())) {
      return answers.page(
          earlier == null ? 404 : 409,
          frame,
          "Nothing to correct",
          earlier == null
              ? "This stay has no such assessment."
              : "This assessment was retracted; it counts no more and stays struck through.");
    }
    var screen =
        EntryScreen.of(
            record, catalogue, UUID.randomUUID().toString(), earlier, only, names(), frame.zone());
    return Response.ok(Pages.assess(frame, screen)).build();
  }

  /** The form without its script. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response send(
      @PathParam("encounter") String encounter, MultivaluedMap<String, String> form) {
    return written(encounter, record -> scribe.record(record, form, viewer.account()));
  }

  @POST
  @Path("retract")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response retract(
      @PathParam("encounter") String encounter, MultivaluedMap<String, String> form) {
    return written(encounter, record -> scribe.retract(record, form, viewer.account()));
  }

  /** A part of the page: what would be said of the draft. */
  @POST
  @Path("preview")
  @Consumes(MediaType.APPLICATION_JSON)
  public Response preview(@PathParam("encounter") String encounter, byte[] body) {
    var sight = patients.recordAgain(encounter, viewer);
    if (!(sight instanceof Sight.Shown<StayRecord> shown)) {
      return Response.status(sight instanceof Sight.OtherWard<?> ? 403 : 404).build();
    }
    Assessment draft;
    try {
      draft = ASSESSMENT.read(body);
    } catch (MalformedException e) {
      return Response.status(Response.Status.BAD_REQUEST).build();
    }
    if (draft.retracted()) {
      return Response.status(Response.Status.BAD_REQUEST).build();
    }
    var screen = screen(previews.of(shown.view(), draft));
    return Response.ok(Pages.preview(clock.instant(), screen)).build();
  }

  private PreviewScreen screen(Foresight foresight) {
    if (foresight instanceof Foresight.Taken taken) {
      return PreviewScreen.of(
          taken.outlook(),
          taken.derivations(),
          taken.whole(),
          score -> guides.response(score).orElse(""),
          findings,
          clock.instant(),
          clock.getZone());
    }
    return PreviewScreen.refused(((Foresight.Refused) foresight).faults());
  }

  /** Something a person wrote down, and what became of it. */
  private interface Writing {
    Scribe.Written of(StayRecord record);
  }

  private Response written(String encounter, Writing writing) {
    Visit visit = Visit.of(viewer);
    String here = here(encounter);
    var sight = patients.recordAgain(encounter, viewer);
    if (!(sight instanceof Sight.Shown<StayRecord> shown)) {
      return hidden(visit, sight, here);
    }
    var written = writing.of(shown.view());
    return answers.page(written.status(), frames.of(visit, here), written.title(), written.words());
  }

  private Response hidden(Visit visit, Sight<?> sight, String here) {
    return sight instanceof Sight.OtherWard<?>
        ? answers.notYourWard(visit, here)
        : answers.unknown(visit, here);
  }

  private static String here(String encounter) {
    return "/encounters/" + encounter + "/assess";
  }

  /** Asks for each account once. */
  private UnaryOperator<String> names() {
    Map<String, String> known = new HashMap<>();
    return account ->
        known.computeIfAbsent(
            account, it -> accounts.find(it).map(Account::displayName).orElse(it));
  }
}
