package org.driftward.ingest.fhir;

import jakarta.ws.rs.core.Response;
import java.util.List;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Fault;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;

/** Faults as an OperationOutcome: one issue each, with our rule, our words and where it is. */
final class Outcomes {

  private Outcomes() {}

  static OperationOutcome refused(List<Fault> faults) {
    var outcome = new OperationOutcome();
    faults.forEach(fault -> issue(outcome, fault, IssueSeverity.ERROR, IssueType.PROCESSING));
    return outcome;
  }

  /** What was accepted, and what was passed over because nobody has mapped it yet. */
  static OperationOutcome accepted(int assessments, int changes, List<Fault> unmapped) {
    var outcome = new OperationOutcome();
    outcome
        .addIssue()
        .setSeverity(IssueSeverity.INFORMATION)
        .setCode(IssueType.INFORMATIONAL)
        .setDiagnostics("accepted " + assessments + " assessments and " + changes + " encounters");
    unmapped.forEach(fault -> issue(outcome, fault, IssueSeverity.WARNING, IssueType.CODEINVALID));
    return outcome;
  }

  static OperationOutcome single(IssueType type, String diagnostics) {
    var outcome = new OperationOutcome();
    outcome.addIssue().setSeverity(IssueSeverity.ERROR).setCode(type).setDiagnostics(diagnostics);
    return outcome;
  }

  /** The answer to a Bundle whose entries are answered one by one. */
  static Bundle bundle(BundleType type, List<EntryAnswer> each) {
    var bundle = new Bundle().setType(type);
    for (var answer : each) {
      var response = bundle.addEntry().getResponse();
      response.setStatus(line(answer.status()));
      response.setLocation(answer.location());
      if (answer.status() == 403) {
        response.setOutcome(otherWard());
      } else if (!answer.faults().isEmpty()) {
        response.setOutcome(answer.refused() ? refused(answer.faults()) : warned(answer.faults()));
      }
    }
    return bundle;
  }

  static OperationOutcome otherWard() {
    return single(IssueType.FORBIDDEN, "This account does not see the encounter's ward");
  }

  private static String line(int status) {
    return status + " " + Response.Status.fromStatusCode(status).getReasonPhrase();
  }

  private static OperationOutcome warned(List<Fault> unmapped) {
    var outcome = new OperationOutcome();
    unmapped.forEach(fault -> issue(outcome, fault, IssueSeverity.WARNING, IssueType.CODEINVALID));
    return outcome;
  }

  private static void issue(
      OperationOutcome outcome, Fault fault, IssueSeverity severity, IssueType type) {
    var issue = outcome.addIssue().setSeverity(severity).setCode(type);
    issue.getDetails().addCoding().setSystem(CodeSystem.RULE).setCode(fault.rule());
    issue.setDiagnostics(fault.pointer() + ": " + fault.detail());
  }
}
