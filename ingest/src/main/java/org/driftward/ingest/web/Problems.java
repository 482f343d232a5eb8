package org.driftward.ingest.web;

import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Problem;

/** The problems (RFC 9457) that intake answers. */
final class Problems {

  private Problems() {}

  static Response refused(List<Fault> faults) {
    return answer(
        new Problem(
            "/problems/refused-input",
            "The input was refused; nothing of it was accepted",
            400,
            faults.size() == 1 ? "1 fault" : faults.size() + " faults",
            faults));
  }

  static Response tooLarge(long limit) {
    return answer(
        Problem.of(
            413,
            "too-large",
            "The request is larger than this installation takes",
            "send at most " + limit + " bytes at once"));
  }

  static Response unavailable(long retryAfterSeconds) {
    var problem =
        Problem.of(
            503,
            "unavailable",
            "Nothing was promised; send the same again later",
            "the message log or the database does not answer");
    return Response.fromResponse(answer(problem))
        .header("Retry-After", Math.max(1, retryAfterSeconds))
        .build();
  }

  static Response otherWard() {
    return answer(Problem.of(403, "other-ward", OtherWardException.DETAIL, null));
  }

  static Response answer(Problem problem) {
    return Response.status(problem.status()).type(Problem.MEDIA_TYPE).entity(problem).build();
  }
}
