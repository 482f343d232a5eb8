package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import org.driftward.alerts.contract.Journal;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The journal: to read, to keep elsewhere, and to check. */
@Path("/api/journal")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@RolesAllowed({AccountRole.MANAGER, AccountRole.ADMIN})
@Tag(name = "journal")
public class JournalResource {

  private static final int LONGEST_PAGE = 1000;

  private static final JsonFormat<Journal.Entry> ENTRY = JsonFormat.of(Journal.Entry.class);

  private final Journal journal;

  public JournalResource(Journal journal) {
    this.journal = journal;
  }

  @GET
  @Operation(summary = "Entries after a sequence, oldest first, at most 1000")
  public List<Journal.Entry> after(
      @QueryParam("after") @DefaultValue("0") long after,
      @QueryParam("limit") @DefaultValue("100") int limit) {
    if (limit < 1 || limit > LONGEST_PAGE) {
      throw Problems.refused("limit", "is from 1 to " + LONGEST_PAGE);
    }
    return journal.after(after, limit);
  }

  @GET
  @Path("/check")
  @Operation(
      summary = "Recompute the chain",
      description =
          "Names the first entry that was altered, removed, inserted or moved. Keep the head"
              + " elsewhere: with it even the database's owner cannot rewrite the journal unseen.")
  public Check check() {
    var verdict = journal.check();
    return new Check(
        verdict.sound(), verdict.entries(), verdict.fault(), verdict.at(), verdict.head());
  }

  @GET
  @Path("/export")
  @Produces({"application/x-ndjson", Problem.MEDIA_TYPE})
  @Operation(
      summary = "Every entry after a sequence, one JSON object on each line",
      description =
          "What is needed to recompute the chain elsewhere: `journal check --file` of the jar does.")
  public StreamingOutput export(@QueryParam("after") @DefaultValue("0") long after) {
    return out -> {
      long written = after;
      for (var page = journal.after(written, LONGEST_PAGE);
          !page.isEmpty();
          page = journal.after(written, LONGEST_PAGE)) {
        for (var entry : page) {
          out.write(ENTRY.write(entry));
          out.write('\n');
          written = entry.sequence();
        }
      }
    };
  }

  @GET
  @Path("/head")
  @Operation(summary = "The newest entry, to be kept elsewhere as an anchor")
  public Journal.Entry head() {
    return journal.last().orElseThrow(() -> Problems.unknown("entry"));
  }

  /** A verdict with its bottom line. */
  public record Check(
      boolean sound, long entries, @Nullable String fault, @Nullable Long at, String head) {}
}
