package org.driftward.alerts.web;

import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Problem;

/** The problems (RFC 9457) that alerts answers. */
final class Problems {

  private Problems() {}

  /** A conflict, with the episode as it stands now as an extension member. */
  public record Conflict(
      String type, String title, int status, String detail, EpisodeView episode) {}

  static Response conflict(EpisodeView current, String why) {
    var conflict =
        new Conflict(
            "/problems/no-longer-applies",
            "The action does not apply to where the episode stands now",
            409,
            why,
            current);
    return Response.status(409).type(Problem.MEDIA_TYPE).entity(conflict).build();
  }

  static WebApplicationException refused(String field, String why) {
    var fault = new Fault("/" + field, "refused-field", field + " " + why);
    return exception(
        new Problem(
            "/problems/refused-input",
            "The input was refused; nothing of it was accepted",
            400,
            "1 fault",
            List.of(fault)));
  }

  static WebApplicationException unknown(String what) {
    return exception(Problem.of(404, "unknown", "There is no such " + what, null));
  }

  static WebApplicationException tooLate(String why) {
    return exception(
        Problem.of(409, "no-longer-applies", "It does not apply to how things stand now", why));
  }

  static WebApplicationException otherWard() {
    return exception(
        Problem.of(403, "other-ward", "This account does not see the encounter's ward", null));
  }

  static WebApplicationException unavailable(String why) {
    return exception(Problem.of(503, "unavailable", "This cannot be answered here", why));
  }

  static WebApplicationException notAllowed(String why) {
    return exception(
        Problem.of(403, "forbidden", "This account's role does not allow the call", why));
  }

  private static WebApplicationException exception(Problem problem) {
    return new WebApplicationException(
        Response.status(problem.status()).type(Problem.MEDIA_TYPE).entity(problem).build());
  }
}
