package org.driftward.dashboard.web.api;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.NarrativeReader;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jspecify.annotations.Nullable;

/**
 * {@code POST /api/encounters/{id}/narrative}: the findings in an examination that was said or
 * typed, for a person to confirm; keeps nothing but that somebody looked.
 */
@Path("/api/encounters")
@ServedBy(Role.DASHBOARD)
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
public class NarrativeResource {

  private static final JsonFormat<Told> TOLD = JsonFormat.of(Told.class);
  private static final JsonFormat<NarrativeJson> ANSWER = JsonFormat.of(NarrativeJson.class);

  private final Patients patients;
  private final Viewer viewer;
  private final NarrativeReader reader = NarrativeReader.shipped();

  public NarrativeResource(Patients patients, Viewer viewer) {
    this.patients = patients;
    this.viewer = viewer;
  }

  /**
   * @param text as it was said or typed
   * @param takenAt when; not needed for reading it
   */
  record Told(@Nullable String text, @Nullable Instant takenAt) {}

  @POST
  @Path("/{encounter}/narrative")
  @Blocking
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces({MediaType.APPLICATION_JSON, "application/problem+json"})
  @Operation(
      summary = "Read an examination that was said or typed",
      description =
          "Not yet for patients: it reads some values that must not be read. Answers the findings"
              + " that it contains, what is unclear, and the clinical words from which nothing was"
              + " made, with offsets in UTF-16 code units. A person has to confirm every finding."
              + " Nothing is kept.")
  public Response narrative(@PathParam("encounter") String encounter, byte[] body) {
    var sight = patients.about(encounter, "assess", viewer, () -> encounter);
    if (!(sight instanceof Sight.Shown<String>)) {
      return sight instanceof Sight.OtherWard<?> ? Answers.otherWard() : Answers.unknownEncounter();
    }
    Told told;
    try {
      told = TOLD.read(body);
    } catch (MalformedException e) {
      return Answers.refused(new Fault("", "malformed-json", String.valueOf(e.getMessage())));
    }
    if (told.text() == null) {
      return Answers.refused(new Fault("/text", "missing", "a text is needed"));
    }
    if (told.text().length() > Narrative.LONGEST) {
      return Answers.refused(
          new Fault("/text", "too-long", "at most " + Narrative.LONGEST + " code units"));
    }
    return Answers.json(ANSWER.write(NarrativeJson.of(reader.read(told.text()))));
  }
}
