package org.driftward.dashboard.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Previews;
import org.driftward.dashboard.web.Previews.Foresight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.contract.Snapshot;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jspecify.annotations.Nullable;

/**
 * {@code POST /api/encounters/{id}/preview}: what would be said of an assessment; keeps nothing.
 */
@Path("/api/encounters")
@ServedBy(Role.DASHBOARD)
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
public class PreviewResource {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<PreviewJson> PREVIEW = JsonFormat.of(PreviewJson.class);

  private final Patients patients;
  private final Previews previews;
  private final Viewer viewer;

  public PreviewResource(Patients patients, Previews previews, Viewer viewer) {
    this.patients = patients;
    this.previews = previews;
    this.viewer = viewer;
  }

  /**
   * The answer.
   *
   * @param snapshot of the draft's own moment
   * @param newest the newest picture with the draft; the same unless a later assessment exists
   * @param before the newest picture without it, or null
   * @param derived what follows from the draft's findings
   * @param questions what they suggest and no published rule settles
   * @param whole whether the whole history of the stay was at hand
   */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record PreviewJson(
      Snapshot snapshot,
      Snapshot newest,
      @Nullable Snapshot before,
      List<Derived> derived,
      List<Question> questions,
      boolean whole) {

    static PreviewJson of(Foresight.Taken taken) {
      var outlook = taken.outlook();
      return new PreviewJson(
          outlook.draft(),
          outlook.newest(),
          outlook.before(),
          taken.derivations().derived(),
          taken.derivations().questions(),
          taken.whole());
    }
  }

  @POST
  @Path("/{encounter}/preview")
  @Blocking
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces({MediaType.APPLICATION_JSON, "application/problem+json"})
  @Operation(
      summary = "Foresee an assessment",
      description =
          "One assessment with every field, as it would be sent to /api/assessments. Answers what"
              + " scoring would say of it, or the faults for which intake would refuse it. Nothing"
              + " is kept.")
  public Response preview(@PathParam("encounter") String encounter, byte[] body) {
    var sight = patients.record(encounter, viewer);
    if (!(sight instanceof Sight.Shown<StayRecord> shown)) {
      return sight instanceof Sight.OtherWard<?> ? Answers.otherWard() : Answers.unknownEncounter();
    }
    Assessment draft;
    try {
      draft = ASSESSMENT.read(body);
    } catch (MalformedException e) {
      return Answers.refused(new Fault("", "malformed-json", String.valueOf(e.getMessage())));
    }
    if (draft.retracted()) {
      return Answers.refused(new Fault("/status", "wrong-type", "nothing follows from retracting"));
    }
    var foresight = previews.of(shown.view(), draft);
    return foresight instanceof Foresight.Taken taken
        ? Answers.json(PREVIEW.write(PreviewJson.of(taken)))
        : Answers.refused(((Foresight.Refused) foresight).faults().toArray(Fault[]::new));
  }
}
