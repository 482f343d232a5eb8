package org.driftward.ingest.web;

import io.quarkus.security.ForbiddenException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.concurrent.CompletionException;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Problem;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/**
 * What goes wrong outside a resource becomes a problem, too. Nothing of the request is echoed or
 * logged: an exception's message may quote what somebody sent about a patient.
 */
public class ProblemMappers {

  private static final Logger LOG = Logger.getLogger(ProblemMappers.class);

  private final IngestConfig config;

  public ProblemMappers(IngestConfig config) {
    this.config = config;
  }

  @ServerExceptionMapper
  public Response unavailable(UnavailableException failure) {
    return Problems.unavailable(config.retryAfter().toSeconds());
  }

  @ServerExceptionMapper
  public Response forbidden(ForbiddenException failure) {
    return Problems.answer(
        Problem.of(403, "forbidden", "This account's role does not allow the call", null));
  }

  @ServerExceptionMapper
  public Response otherWard(OtherWardException failure) {
    return Problems.otherWard();
  }

  /** A page keeps the framework's own answer; a program gets a problem. */
  @ServerExceptionMapper
  public Response refusedByFramework(
      WebApplicationException failure, @Context HttpHeaders headers) {
    var response = failure.getResponse();
    int status = response.getStatus();
    boolean page =
        headers.getAcceptableMediaTypes().stream()
            .anyMatch(type -> type.getSubtype().equals(MediaType.TEXT_HTML_TYPE.getSubtype()));
    if (response.hasEntity() || status < 400 || page) {
      return response;
    }
    var known = Response.Status.fromStatusCode(status);
    var title = known == null ? "The call failed" : known.getReasonPhrase();
    return Problems.answer(Problem.of(status, "http-" + status, title, null));
  }

  @ServerExceptionMapper
  public Response failed(RuntimeException failure) {
    if (failure instanceof CompletionException
        && failure.getCause() instanceof UnavailableException) {
      return Problems.unavailable(config.retryAfter().toSeconds());
    }
    LOG.error("A call failed", Redacted.of(failure));
    return Problems.answer(Problem.of(500, "failure", "The call failed", null));
  }
}
