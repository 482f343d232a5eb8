package org.driftward.dashboard.web.page;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.ForbiddenException;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Duration;
import java.time.Instant;
import java.time.Period;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.ChartData;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.HistoryTable;
import org.driftward.dashboard.screen.PatientScreen;
import org.driftward.dashboard.security.WardSight;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.dashboard.web.page.Events.Part;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoreTables;
import org.driftward.scoring.contract.ScoreTables.Cell;
import org.jspecify.annotations.Nullable;

/** One patient. */
@Path("/encounters/{encounter}")
@ServedBy(Role.DASHBOARD)
@Page
@Authenticated
@Blocking
@Produces(MediaType.TEXT_HTML)
public class PatientPage {

  /** The longest course that is drawn. */
  private static final int LONGEST_HOURS = 72;

  private final Viewer viewer;
  private final WardReader wards;
  private final Frames frames;
  private final Answers answers;
  private final LiveStream streams;
  private final Patients patients;
  private final WardSight sight;
  private final DeliveryDesk deliveries;
  private final Lookout lookout;
  private final Populations populations;
  private final ScoreTables tables = ScoreTables.shipped(Catalogue.shipped());
  private final Findings findings = new Findings(Catalogue.shipped());

  PatientPage(
      Viewer viewer,
      WardReader wards,
      Frames frames,
      Answers answers,
      LiveStream streams,
      Patients patients,
      WardSight sight,
      DeliveryDesk deliveries,
      Lookout lookout,
      Populations populations) {
    this.viewer = viewer;
    this.wards = wards;
    this.frames = frames;
    this.answers = answers;
    this.streams = streams;
    this.patients = patients;
    this.sight = sight;
    this.deliveries = deliveries;
    this.lookout = lookout;
    this.populations = populations;
  }

  @GET
  public Response patient(
      @PathParam("encounter") String encounter,
      @QueryParam("hours") @DefaultValue("24") int hours) {
    Visit visit = Visit.of(viewer);
    String here = "/encounters/" + encounter;
    var looked = patients.patient(encounter, viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return looked instanceof Sight.OtherWard
          ? answers.notYourWard(visit, here)
          : answers.unknown(visit, here);
    }
    PatientView view = shown.view();
    var elsewhere = Answers.ofSurvivor(view.encounter(), "");
    if (elsewhere != null) {
      return elsewhere;
    }
    Frame frame = frames.of(visit, here).at(view.asOf());
    int back = clip(hours);
    var record =
        HistoryTable.of(
            history(view, back), findings, frame.now(), frame.zone(), visit.reader().cares());
    var screen = screen(visit, frame, told(view));
    var warnings = Warnings.ofPatient(encounter, lookout).now();
    return Response.ok(Pages.patient(frame, screen, warnings, record, back, null)).build();
  }

  /** What the charts draw. */
  @GET
  @Path("course")
  @Produces(MediaType.APPLICATION_JSON)
  public ChartData course(
      @PathParam("encounter") String encounter,
      @QueryParam("hours") @DefaultValue("24") int hours) {
    Visit visit = Visit.of(viewer);
    PatientView view = seen(visit, encounter);
    Frame frame = frames.of(visit, "").at(view.asOf());
    int back = clip(hours);
    Instant to = view.asOf();
    return ChartData.of(
        history(view, back),
        findings,
        input -> cells(view, frame, input),
        to.minus(Duration.ofHours(back)),
        to,
        frame.offset());
  }

  /** The cells that score this patient now. */
  private List<Cell> cells(PatientView view, Frame frame, String input) {
    Score score = view.snapshot() == null ? null : view.snapshot().leading();
    if (score == null) {
      return List.of();
    }
    var born = view.encounter().patient().birthDate();
    Integer years =
        born == null
            ? null
            : Period.between(born, frame.now().atZone(frame.zone()).toLocalDate()).getYears();
    return tables.cells(score.id(), score.version(), input, view.standing().oxygenScale(), years);
  }

  @GET
  @Path("live")
  @Produces(MediaType.SERVER_SENT_EVENTS)
  public Multi<OutboundSseEvent> live(@PathParam("encounter") String encounter, @Context Sse sse) {
    Visit visit = Visit.of(viewer);
    PatientView first = seen(visit, encounter);
    Frame frame = frames.of(visit, "/encounters/" + encounter);
    var warnings = Warnings.ofPatient(encounter, lookout);
    return streams.of(
        sse,
        List.of(first.encounter().ward()),
        () -> wards.patient(encounter).filter(view -> stillSeen(visit, view)).map(this::told),
        (before, now) -> warnings.with(parts(visit, frame, before, now)));
  }

  private List<Part> parts(Visit visit, Frame frame, @Nullable Told before, Told now) {
    if (before != null
        && sameToTheEye(before.view(), now.view())
        && before.deliveries().equals(now.deliveries())) {
      return List.of();
    }
    Frame later = frame.at(now.view().asOf());
    var body = Pages.patientBody(later, screen(visit, later, now));
    return List.of(new Part("patient", body.render()));
  }

  private static boolean sameToTheEye(PatientView before, PatientView now) {
    return before.card().equals(now.card())
        && before.encounter().equals(now.encounter())
        && Objects.equals(before.snapshot(), now.snapshot())
        && Objects.equals(before.carePlanInForce(), now.carePlanInForce())
        && before.standing().equals(now.standing())
        && before.story().equals(now.story());
  }

  /** For what belongs to a page that was asked for, and so was kept as a look, before. */
  private PatientView seen(Visit visit, String encounter) {
    PatientView view = wards.patient(encounter).orElseThrow(NotFoundException::new);
    if (!visit.sees(view.encounter().ward())) {
      throw new ForbiddenException();
    }
    return view;
  }

  /** Asked for every reading: the patient may have been moved, or the person's wards changed. */
  private boolean stillSeen(Visit visit, PatientView view) {
    return sight.stillSees(visit.account(), view.encounter().ward());
  }

  private PatientHistory history(PatientView view, int hours) {
    // "To" is exclusive, and a set taken this very moment belongs to the course.
    return wards.history(
        view.encounter().id(),
        view.asOf().minus(Duration.ofHours(hours)),
        view.asOf().plusMillis(1));
  }

  /** A patient, and how the alarms of the running episode reached whom. */
  private record Told(PatientView view, List<Delivery> deliveries) {}

  private Told told(PatientView view) {
    var episode = view.episode();
    return new Told(view, episode == null ? List.of() : deliveries.of(episode.id()));
  }

  private PatientScreen screen(Visit visit, Frame frame, Told told) {
    return PatientScreen.of(
        told.view(), told.deliveries(), findings, populations, visit.reader(), frame.zone());
  }

  private static int clip(int hours) {
    return Math.max(1, Math.min(LONGEST_HOURS, hours));
  }
}
