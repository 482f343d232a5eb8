package org.driftward.scoring.web;

import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Problem;
import org.driftward.scoring.rescore.Rescores.ConflictException;

/** The problems (RFC 9457) that scoring answers. */
final class Problems {

  private Problems() {}

  static WebApplicationException refused(String field, String why) {
    var fault = new Fault(field.isEmpty() ? "" : "/" + field, "refused-field", why);
    return exception(
        new Problem(
            "/problems/refused-input",
            "The input was refused; nothing of it was accepted",
            400,
            "1 fault",
            List.of(fault)));
  }

  static WebApplicationException unknown() {
    return exception(Problem.of(404, "unknown", "There is no such re-scoring", null));
  }

  static WebApplicationException conflict(ConflictException why) {
    return exception(
        Problem.of(
            409,
            "no-longer-applies",
            "The call does not apply to where things stand",
            why.getMessage()));
  }

  private static WebApplicationException exception(Problem problem) {
    return new WebApplicationException(
        Response.status(problem.status()).type(Problem.MEDIA_TYPE).entity(problem).build());
  }
}
