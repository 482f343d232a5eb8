package org.driftward.ingest.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletionStage;
import java.util.function.Function;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.core.Draft;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /api/assessments}: one assessment or an array of them, all or nothing. */
@Path("/api/assessments")
@ServedBy(Role.INGEST)
@RolesAllowed({
  AccountRole.BEDSIDE,
  AccountRole.CHARGE,
  AccountRole.RESPONSE,
  AccountRole.INTEGRATION,
  AccountRole.ADMIN
})
@Tag(name = "intake")
public class AssessmentResource {

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final AssessmentReader reader;
  private final IntakeRules rules;
  private final BodyLimit bodyLimit;
  private final Clock clock;
  private final Sender sender;

  public AssessmentResource(
      AssessmentIntake intake,
      EncounterDirectory directory,
      AssessmentReader reader,
      IntakeRules rules,
      BodyLimit bodyLimit,
      Clock clock,
      Sender sender) {
    this.intake = intake;
    this.directory = directory;
    this.reader = reader;
    this.rules = rules;
    this.bodyLimit = bodyLimit;
    this.clock = clock;
    this.sender = sender;
  }

  @POST
  @Blocking
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
  @Operation(
      summary = "Send assessments",
      description =
          "One assessment or an array; all or nothing. Sending the same id and revision again is"
              + " accepted again and changes nothing.")
  @RequestBody(
      required = true,
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(oneOf = {Assessment.class, Assessment[].class})))
  @APIResponse(
      responseCode = "202",
      description = "Kept",
      content = @Content(schema = @Schema(implementation = AcceptedIds.class)))
  @APIResponse(
      responseCode = "400",
      description = "Refused whole; every fault by JSON pointer",
      content =
          @Content(
              mediaType = Problem.MEDIA_TYPE,
              schema = @Schema(implementation = Problem.class)))
  @APIResponse(responseCode = "403", description = "A ward that the account does not see")
  @APIResponse(responseCode = "413", description = "Larger than the limit")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public CompletionStage<Response> post(byte[] body) {
    bodyLimit.check(body);
    var received = sender.received("POST /api/assessments", body);
    var now = clock.instant();
    Reading reading;
    try {
      reading = reader.read(JsonTree.parse(body), new Defaults(now, sender.account()));
    } catch (NotJsonException e) {
      var fault = new Fault("", Rule.MALFORMED_JSON.word(), String.valueOf(e.getMessage()));
      return answer(intake.refuse(received, List.of(fault)));
    }
    var known = remembering(directory::find);
    checkWards(reading, known);
    var faults = rules.check(reading, known, now);
    return answer(
        faults.isEmpty()
            ? intake.accept(received, reading.assessments())
            : intake.refuse(received, faults));
  }

  /** Before any fault is told: a fault, too, may tell something about a patient. */
  private void checkWards(Reading reading, Function<String, Optional<Encounter>> known) {
    boolean allSeen =
        reading.drafts().stream()
            .map(Draft::encounter)
            .filter(Objects::nonNull)
            .flatMap(encounter -> known.apply(encounter).stream())
            .allMatch(encounter -> sender.sees(encounter.ward()));
    if (!allSeen) {
      throw Problems.otherWard();
    }
  }

  /** One question for each encounter of a request, however many assessments name it. */
  private static Function<String, Optional<Encounter>> remembering(
      Function<String, Optional<Encounter>> directory) {
    var asked = new HashMap<String, Optional<Encounter>>();
    return encounter -> asked.computeIfAbsent(encounter, directory);
  }

  private static CompletionStage<Response> answer(
      CompletionStage<AssessmentIntake.Outcome> outcome) {
    return Answers.of(outcome, Response.Status.ACCEPTED);
  }
}
