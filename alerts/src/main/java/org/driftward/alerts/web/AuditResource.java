package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.driftward.alerts.contract.AuditDesk;
import org.driftward.alerts.contract.AuditDesk.UnavailableException;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.PolicyTrial;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The manager's measures, the events that no feed brings, and what another policy would do. */
@Path("/api/audit")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@RolesAllowed({AccountRole.MANAGER, AccountRole.ADMIN})
@Tag(name = "audit")
public class AuditResource {

  private static final String CSV = "text/csv";

  private final AuditDesk desk;
  private final SignedIn signedIn;
  private final Clock clock;

  public AuditResource(AuditDesk desk, SignedIn signedIn, Clock clock) {
    this.desk = desk;
    this.signedIn = signedIn;
    this.clock = clock;
  }

  @GET
  @Operation(summary = "Every measure, with numerator, denominator and what they rest on")
  public AuditReport report(@BeanParam AuditAsked asked) {
    return measured(asked);
  }

  @GET
  @Produces(CSV)
  public String csv(@BeanParam AuditAsked asked) {
    return AuditCsv.write(measured(asked).measures());
  }

  /** For a link in a browser, which cannot choose what it accepts. */
  @GET
  @Path("/measures.csv")
  @Produces(CSV)
  public String spreadsheet(@BeanParam AuditAsked asked) {
    return csv(asked);
  }

  /** The same for JSON. */
  @GET
  @Path("/measures.json")
  @Produces(MediaType.APPLICATION_JSON)
  public AuditReport document(@BeanParam AuditAsked asked) {
    return report(asked);
  }

  @GET
  @Path("/measures/{id}")
  @Operation(summary = "One measure: M1 to M20, time-to-acknowledge, time-to-attend, …")
  public Measure measure(@PathParam("id") String id, @BeanParam AuditAsked asked) {
    return one(id, asked);
  }

  @GET
  @Path("/measures/{id}")
  @Produces(CSV)
  public String measureCsv(@PathParam("id") String id, @BeanParam AuditAsked asked) {
    return AuditCsv.write(List.of(one(id, asked)));
  }

  private Measure one(String id, AuditAsked asked) {
    return measured(asked).measures().stream()
        .filter(measure -> measure.id().equals(id))
        .findFirst()
        .orElseThrow(() -> Problems.unknown("measure"));
  }

  @GET
  @Path("/events")
  @Operation(summary = "Arrests, moves to intensive care, deaths, surveys and staffing, as entered")
  public List<AuditEvent> events(@BeanParam AuditAsked asked) {
    var question = question(asked);
    return desk.events(question.wards(), question.from(), question.to());
  }

  @POST
  @Path("/events")
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Enter an event that no feed brings",
      description = "Kept in the journal. Without an id it is given one.")
  public Response record(EventBody body) {
    var event = body.event(() -> UUID.randomUUID().toString());
    signedIn.mustSee(event.ward());
    if (event.at().isAfter(clock.instant())) {
      throw Problems.refused("at", "lies in the future");
    }
    desk.record(event, signedIn.actor());
    return Response.status(201).entity(event).build();
  }

  @DELETE
  @Path("/events/{id}")
  @Operation(summary = "Take an event back; the journal keeps both")
  public void withdraw(@PathParam("id") String id, @QueryParam("reason") @Nullable String reason) {
    if (reason == null || reason.isBlank()) {
      throw Problems.refused("reason", "says why");
    }
    var known =
        desk.events(signedIn.wards(), Instant.EPOCH, Instant.MAX).stream()
            .anyMatch(event -> event.id().equals(id));
    if (!known || !desk.withdraw(id, reason, signedIn.actor())) {
      throw Problems.unknown("event");
    }
  }

  @GET
  @Path("/policy")
  @Produces("application/yaml")
  @Operation(summary = "The escalation policy in force, to be edited for a trial")
  public String policy() {
    return desk.policyInForce();
  }

  @POST
  @Path("/trial")
  @Consumes({"application/yaml", MediaType.TEXT_PLAIN})
  @Operation(summary = "What an edited policy would have cost and caught, over recorded pictures")
  public PolicyTrial trial(String policy, @BeanParam AuditAsked asked) {
    try {
      return desk.trial(policy, question(asked));
    } catch (IllegalArgumentException e) {
      throw Problems.refused("policy", String.valueOf(e.getMessage()));
    } catch (UnavailableException e) {
      throw Problems.unavailable(String.valueOf(e.getMessage()));
    }
  }

  private AuditReport measured(AuditAsked asked) {
    var question = question(asked);
    try {
      return desk.report(question);
    } catch (UnavailableException e) {
      throw Problems.unavailable(String.valueOf(e.getMessage()));
    }
  }

  private AuditQuestion question(AuditAsked asked) {
    if (asked.ward != null) {
      signedIn.mustSee(asked.ward);
    }
    @Nullable Set<String> seen = signedIn.wards();
    return asked.question(seen, clock.instant());
  }
}
