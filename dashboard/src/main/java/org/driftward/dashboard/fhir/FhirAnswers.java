package org.driftward.dashboard.fhir;

import ca.uhn.fhir.context.FhirContext;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;

/** Resources as HTTP answers, in the format that was asked for. Thread-safe. */
@Singleton
final class FhirAnswers {

  static final String JSON = "application/fhir+json";
  static final String XML = "application/fhir+xml";

  private final FhirContext context = FhirContext.forR4Cached();

  /** A patient's data: kept by no cache on the way. */
  Response of(int status, Resource resource, boolean xml) {
    var parser = xml ? context.newXmlParser() : context.newJsonParser();
    return Response.status(status)
        .type(xml ? XML : JSON)
        .entity(parser.encodeResourceToString(resource))
        .header("Cache-Control", "private, no-store")
        .build();
  }

  Response problem(int status, IssueType type, String diagnostics, boolean xml) {
    var outcome = new OperationOutcome();
    outcome.addIssue().setSeverity(IssueSeverity.ERROR).setCode(type).setDiagnostics(diagnostics);
    return of(status, outcome, xml);
  }

  /** By {@code _format}, which counts more, or by what the caller accepts first. */
  static boolean wantsXml(@Nullable String format, HttpHeaders headers) {
    if (format != null) {
      return format.contains("xml");
    }
    return headers.getAcceptableMediaTypes().stream()
        .findFirst()
        .filter(type -> type.getSubtype().contains("xml") && !type.getSubtype().contains("html"))
        .isPresent();
  }
}
