package org.driftward.ingest.fhir;

import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;

/** Faults as an OperationOutcome: one issue each, with our rule, our words and where it is. */
final class Outcomes {

  private static final String RULES = "urn:driftward:rule";

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

  private static void issue(
      OperationOutcome outcome, Fault fault, IssueSeverity severity, IssueType type) {
    var issue = outcome.addIssue().setSeverity(severity).setCode(type);
    issue.getDetails().addCoding().setSystem(RULES).setCode(fault.rule());
    issue.setDiagnostics(fault.pointer() + ": " + fault.detail());
  }
}
