package org.driftward.dashboard.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.dashboard.core.AccessBook;
import org.driftward.dashboard.core.AccessBook.Look;
import org.driftward.dashboard.core.AccessBook.Question;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/** Who looked at which patient, for those who answer for it. */
@Path("/api/audit/access")
@ServedBy(Role.DASHBOARD)
@RolesAllowed({AccountRole.MANAGER, AccountRole.ADMIN})
@Produces({"application/json", "application/problem+json"})
public class AccessResource {

  /**
   * @param looks newest first
   * @param complete whether nothing was left off for length
   */
  record Looks(Instant from, Instant to, List<Look> looks, boolean complete) {}

  private static final JsonFormat<Looks> LOOKS = JsonFormat.of(Looks.class);
  private static final JsonFormat<Verdict> VERDICT = JsonFormat.of(Verdict.class);
  private static final Duration USUAL_STRETCH = Duration.ofDays(7);
  private static final int LONGEST = 5000;

  private final AccessBook book;
  private final Viewer viewer;
  private final Clock clock;

  public AccessResource(AccessBook book, Viewer viewer, Clock clock) {
    this.book = book;
    this.viewer = viewer;
    this.clock = clock;
  }

  /**
   * @param from inclusive; a week before {@code to} unless given
   * @param to exclusive; now unless given
   */
  @GET
  public Response looks(
      @QueryParam("ward") @Nullable String ward,
      @QueryParam("encounter") @Nullable String encounter,
      @QueryParam("account") @Nullable String account,
      @QueryParam("from") @Nullable String from,
      @QueryParam("to") @Nullable String to) {
    if (ward != null && !viewer.sees(ward)) {
      return Answers.otherWard();
    }
    Instant end;
    Instant begin;
    try {
      end = to == null ? clock.instant().plusMillis(1) : Instant.parse(to);
      begin = from == null ? end.minus(USUAL_STRETCH) : Instant.parse(from);
    } catch (DateTimeException e) {
      return Answers.refused(
          new Fault("", "time", "from and to are times like 2026-01-05T03:10:00Z"));
    }
    var scope = ward == null ? viewer.scope() : WardScope.of(Set.of(ward));
    var found = book.looks(new Question(scope, encounter, account, begin, end, LONGEST + 1));
    boolean complete = found.size() <= LONGEST;
    var shown = complete ? found : found.subList(0, LONGEST);
    return Answers.json(LOOKS.write(new Looks(begin, end, shown, complete)));
  }

  /** Whether anybody edited the record of looks. */
  @GET
  @Path("/check")
  public Response check() {
    return Answers.json(VERDICT.write(book.check()));
  }
}
