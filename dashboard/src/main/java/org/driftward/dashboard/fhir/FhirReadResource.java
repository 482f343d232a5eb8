package org.driftward.dashboard.fhir;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.jspecify.annotations.Nullable;

/** What other systems read over FHIR R4: Observations, and what this server can do. */
@Path("/fhir")
@ServedBy(Role.DASHBOARD)
@Authenticated
@Produces({
  FhirAnswers.JSON,
  FhirAnswers.XML,
  MediaType.APPLICATION_JSON,
  MediaType.APPLICATION_XML
})
@Tag(name = "fhir")
public class FhirReadResource {

  private static final String LOOK = "fhir";

  private final Searcher searcher;
  private final FhirAnswers answers;
  private final Patients patients;
  private final Viewer viewer;

  FhirReadResource(Searcher searcher, FhirAnswers answers, Patients patients, Viewer viewer) {
    this.searcher = searcher;
    this.answers = answers;
    this.patients = patients;
    this.viewer = viewer;
  }

  /** Says nothing about any patient, and so is told to everybody, as R4 recommends. */
  @GET
  @Path("/metadata")
  @PermitAll
  @Operation(summary = "What this server can do, as a CapabilityStatement")
  public Response metadata(
      @QueryParam("_format") @Nullable String format, @Context HttpHeaders headers) {
    return answers.of(200, Capability.statement(), FhirAnswers.wantsXml(format, headers));
  }

  /**
   * @param encounter the hospital's number of the stay, with or without {@code Encounter/}
   * @param codes each a system, a bar and a code, or a code alone; several with commas
   * @param dates for example {@code ge2026-01-05}
   * @param page from the link of the page before
   */
  @GET
  @Path("/Observation")
  @Blocking
  @Operation(
      summary = "Findings and scores of a stay, newest first",
      description = "A searchset Bundle; the link next leads to older ones.")
  @APIResponse(responseCode = "200", description = "A page, which may be empty")
  @APIResponse(responseCode = "400", description = "A parameter that cannot be read")
  @APIResponse(responseCode = "403", description = "A ward that the account does not see")
  @APIResponse(responseCode = "404", description = "No such encounter")
  public Response search(
      @QueryParam("encounter") @Nullable String encounter,
      @QueryParam("code") List<String> codes,
      @QueryParam("date") List<String> dates,
      @QueryParam("_count") @Nullable String count,
      @QueryParam("page") @Nullable String page,
      @QueryParam("_format") @Nullable String format,
      @Context HttpHeaders headers,
      @Context UriInfo uri) {
    boolean xml = FhirAnswers.wantsXml(format, headers);
    Search search;
    try {
      search = Search.of(encounter, codes, dates, count, page);
    } catch (IllegalArgumentException e) {
      return answers.problem(400, IssueType.INVALID, String.valueOf(e.getMessage()), xml);
    }
    var sight = patients.about(search.encounter(), LOOK, viewer, () -> searcher.find(search));
    return sight instanceof Sight.Shown<Searcher.Page> shown
        ? answers.of(200, SearchSet.of(search, shown.view(), uri.getAbsolutePath()), xml)
        : hidden(sight, xml);
  }

  @GET
  @Path("/Observation/{id}")
  @Blocking
  @Operation(summary = "One finding or score")
  @APIResponse(responseCode = "200", description = "The Observation")
  @APIResponse(responseCode = "403", description = "A ward that the account does not see")
  @APIResponse(responseCode = "404", description = "No such Observation")
  @APIResponse(responseCode = "410", description = "There was one, and it was taken back")
  public Response read(
      @PathParam("id") String id,
      @QueryParam("_format") @Nullable String format,
      @Context HttpHeaders headers) {
    boolean xml = FhirAnswers.wantsXml(format, headers);
    var moment = searcher.moment(id);
    if (moment.isEmpty()) {
      return unknown(xml);
    }
    var encounter = moment.get().encounter();
    var sight = patients.about(encounter, LOOK, viewer, () -> searcher.read(moment.get(), id));
    if (!(sight instanceof Sight.Shown<Optional<Observation>> shown)) {
      return hidden(sight, xml);
    }
    if (shown.view().isEmpty()) {
      return moment.get().assessment().retracted()
          ? answers.problem(410, IssueType.DELETED, "It was taken back", xml)
          : unknown(xml);
    }
    return answers.of(200, shown.view().get(), xml);
  }

  private Response hidden(Sight<?> sight, boolean xml) {
    return sight instanceof Sight.OtherWard<?>
        ? answers.problem(
            403, IssueType.FORBIDDEN, "This account does not see the encounter's ward", xml)
        : unknown(xml);
  }

  private Response unknown(boolean xml) {
    return answers.problem(404, IssueType.NOTFOUND, "There is no such thing", xml);
  }
}
