package org.driftward.dashboard.web.api;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Function;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Problem;

/** The answers of the dashboard's JSON calls. */
final class Answers {

  private static final JsonFormat<Problem> PROBLEM = JsonFormat.of(Problem.class);

  private Answers() {}

  /**
   * A patient's data: kept by no cache on the way. With an entity tag over everything but the time
   * of reading, so that a program that asks again and again is told cheaply that nothing changed.
   *
   * @param json writes the answer as of a time
   */
  static Response patientData(Request request, Instant asOf, Function<Instant, byte[]> json) {
    var tag = new EntityTag(digest(json.apply(Instant.EPOCH)), true);
    var unchanged = request.evaluatePreconditions(tag);
    var builder =
        unchanged != null ? unchanged : Response.ok(json.apply(asOf), MediaType.APPLICATION_JSON);
    return builder.tag(tag).header("Cache-Control", "private, no-store").build();
  }

  static Response json(byte[] json) {
    return Response.ok(json, MediaType.APPLICATION_JSON)
        .header("Cache-Control", "no-store")
        .build();
  }

  /** What was asked for is kept under another address now, which the caller may not see. */
  static Response elsewhere(URI address) {
    return Response.temporaryRedirect(address).header("Cache-Control", "no-store").build();
  }

  static Response otherWard() {
    return problem(Problem.of(403, "other-ward", "This account does not see that ward", null));
  }

  static Response unknownEncounter() {
    return problem(Problem.of(404, "unknown-encounter", "There is no such encounter", null));
  }

  static Response refused(Fault... faults) {
    return problem(
        new Problem(
            "/problems/refused-input",
            "The input was refused; nothing of it was accepted",
            400,
            faults.length == 1 ? "1 fault" : faults.length + " faults",
            List.of(faults)));
  }

  static Response problem(Problem problem) {
    return Response.status(problem.status())
        .type(Problem.MEDIA_TYPE)
        .entity(PROBLEM.write(problem))
        .header("Cache-Control", "no-store")
        .build();
  }

  private static String digest(byte[] bytes) {
    try {
      var hash = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(hash, 0, 16);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("SHA-256 is part of every Java platform", e);
    }
  }
}
