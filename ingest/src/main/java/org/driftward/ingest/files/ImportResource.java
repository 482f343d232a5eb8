package org.driftward.ingest.files;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.files.Uploads.Answer;
import org.driftward.ingest.store.Imports;
import org.driftward.ingest.web.Sender;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/**
 * {@code /api/imports}: files of assessments. A small one is one call; a large one comes in parts,
 * with the header fields of the IETF's draft on resumable uploads (draft-ietf-httpbis-resumable-
 * upload): {@code Upload-Complete}, {@code Upload-Offset}, {@code Upload-Length}.
 */
@Path("/api/imports")
@ServedBy(Role.INGEST)
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Tag(name = "intake")
public class ImportResource {

  static final String CSV = "text/csv";
  static final String NDJSON = "application/x-ndjson";
  static final String PART = "application/partial-upload";

  private static final String COMPLETE = "Upload-Complete";
  private static final String OFFSET = "Upload-Offset";
  private static final String LENGTH = "Upload-Length";
  private static final String YES = "?1";

  private final Uploads uploads;
  private final Imports imports;
  private final Sender sender;

  ImportResource(Uploads uploads, Imports imports, Sender sender) {
    this.uploads = uploads;
    this.imports = imports;
    this.sender = sender;
  }

  @POST
  @Blocking
  @Consumes({CSV, NDJSON})
  @Operation(
      summary = "Send a file of assessments",
      description =
          "CSV with a header (see /api/imports/template) or NDJSON. Rows are brought in one by one,"
              + " after the answer; ask Location how far it is. With Upload-Complete: ?0 this is the"
              + " first part of a larger file, and the others follow by PATCH. The same key again"
              + " goes on with the same file.")
  @APIResponse(responseCode = "202", description = "Kept; Upload-Offset is where to go on")
  @APIResponse(responseCode = "400", description = "An unknown mapping")
  @APIResponse(responseCode = "413", description = "The part, or the whole, is too large")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response begin(
      @HeaderParam(HttpHeaders.CONTENT_TYPE) String contentType,
      @HeaderParam(COMPLETE) @DefaultValue(YES) String complete,
      @HeaderParam(LENGTH) @Nullable Long length,
      @QueryParam("name") @DefaultValue("upload") String name,
      @QueryParam("mapping") @Nullable String mapping,
      @QueryParam("key") @Nullable String key,
      byte[] body) {
    return answer(
        uploads.begin(
            new Uploads.First(
                contentType, name, mapping, key, length, Bytes.of(body), complete.equals(YES)),
            sender.bearer()));
  }

  @PATCH
  @Path("/{id}")
  @Blocking
  @Consumes(PART)
  @Operation(summary = "Send the next part of a file")
  @APIResponse(responseCode = "202", description = "Kept; Upload-Offset is where to go on")
  @APIResponse(responseCode = "409", description = "Go on at Upload-Offset instead")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response add(
      @PathParam("id") String id,
      @HeaderParam(OFFSET) long offset,
      @HeaderParam(COMPLETE) @DefaultValue("?0") String complete,
      byte[] body) {
    var known = find(id);
    return answer(uploads.add(known.id(), offset, Bytes.of(body), complete.equals(YES)));
  }

  @GET
  @Blocking
  @Operation(summary = "The newest files")
  public List<FileImport> newest() {
    return imports.newest(sight());
  }

  @GET
  @Path("/{id}")
  @Blocking
  @Operation(summary = "How far a file is")
  @APIResponse(responseCode = "404", description = "None of this account's")
  public Response progress(@PathParam("id") String id) {
    var found = find(id);
    return Response.ok(found).header(OFFSET, found.received()).build();
  }

  private FileImport find(String id) {
    return imports.find(id, sight()).orElseThrow(NotFoundException::new);
  }

  private Sight sight() {
    return new Sight(sender.account(), sender.scope());
  }

  private static Response answer(Answer answer) {
    if (answer instanceof Answer.Kept kept) {
      return Response.accepted(kept.now())
          .header(HttpHeaders.LOCATION, "/api/imports/" + kept.now().id())
          .header(OFFSET, kept.now().received())
          .build();
    }
    var refused = (Answer.Refused) answer;
    var response =
        Response.status(refused.problem().status())
            .type(Problem.MEDIA_TYPE)
            .entity(refused.problem());
    if (refused.offset() != null) {
      response.header(OFFSET, refused.offset());
    }
    return response.build();
  }
}
