package org.driftward.dashboard.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/**
 * One patient, now and over time. A number that was given up because it stood for the same stay as
 * another leads to that one; its history still is what was recorded under it.
 */
@Path("/api/encounters")
@ServedBy(Role.DASHBOARD)
@Authenticated
public class PatientResource {

  private static final JsonFormat<PatientHistory> HISTORY = JsonFormat.of(PatientHistory.class);
  private static final Duration USUAL_STRETCH = Duration.ofDays(2);
  private static final Duration AHEAD = Duration.ofHours(1);

  private final Patients patients;
  private final Viewer viewer;
  private final Clock clock;

  public PatientResource(Patients patients, Viewer viewer, Clock clock) {
    this.patients = patients;
    this.viewer = viewer;
    this.clock = clock;
  }

  @GET
  @Path("/{encounter}")
  @Produces({MediaType.APPLICATION_JSON, "application/problem+json"})
  public Response patient(@PathParam("encounter") String encounter, @Context Request request) {
    var sight = patients.patient(encounter, viewer);
    if (!(sight instanceof Sight.Shown<PatientView> shown)) {
      return hidden(sight);
    }
    var view = shown.view();
    var survivor = view.encounter().mergedInto();
    return survivor == null
        ? Answers.patientData(request, view.asOf(), asOf -> PatientJson.write(view, asOf))
        : Answers.elsewhere(UriBuilder.fromResource(PatientResource.class).path(survivor).build());
  }

  /**
   * @param from inclusive, ISO 8601 in UTC; without it, two days before {@code to} or now
   * @param to exclusive; without it everything since {@code from}
   */
  @GET
  @Path("/{encounter}/history")
  @Produces({MediaType.APPLICATION_JSON, "application/problem+json"})
  public Response history(
      @PathParam("encounter") String encounter,
      @QueryParam("from") @Nullable String from,
      @QueryParam("to") @Nullable String to,
      @Context Request request) {
    Instant end;
    Instant begin;
    try {
      // A clock somewhere may be ahead of ours: what it dated counts as well.
      end = to == null ? clock.instant().plus(AHEAD) : Instant.parse(to);
    } catch (DateTimeException e) {
      return Answers.refused(notATime("to"));
    }
    try {
      begin = from == null ? end.minus(USUAL_STRETCH) : Instant.parse(from);
    } catch (DateTimeException e) {
      return Answers.refused(notATime("from"));
    }
    var sight = patients.history(encounter, begin, end, viewer);
    return sight instanceof Sight.Shown<PatientHistory> shown
        ? Answers.patientData(request, end, asOf -> HISTORY.write(shown.view()))
        : hidden(sight);
  }

  private static Fault notATime(String parameter) {
    return new Fault(
        "", "time", "the parameter " + parameter + " is not a time like 2026-01-05T03:10:00Z");
  }

  private static Response hidden(Sight<?> sight) {
    return sight instanceof Sight.OtherWard<?> ? Answers.otherWard() : Answers.unknownEncounter();
  }
}
