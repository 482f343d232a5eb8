package org.driftward.ingest.fhir;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.core.Rule;

/**
 * What a FHIR request, or one entry of it, says in our words, gathered while it is read. Used by
 * one thread.
 *
 * <p>{@code faults} refuse; {@code unmapped} are observations of things the catalogue does not
 * know: reported and kept, but no reason to refuse the rest. {@code codes} are theirs.
 */
final class Converted {

  final List<Put> changes = new ArrayList<>();
  final List<Assessment> assessments = new ArrayList<>();
  final List<Fault> faults = new ArrayList<>();
  final List<Fault> unmapped = new ArrayList<>();
  final List<UnmappedCode> codes = new ArrayList<>();
  private final List<String> changePointers = new ArrayList<>();
  private final List<String> assessmentPointers = new ArrayList<>();

  void add(String pointer, Assessment assessment) {
    assessments.add(assessment);
    assessmentPointers.add(pointer);
  }

  void add(String pointer, Put change) {
    changes.add(change);
    changePointers.add(pointer);
  }

  void addAll(Converted other) {
    changes.addAll(other.changes);
    changePointers.addAll(other.changePointers);
    assessments.addAll(other.assessments);
    assessmentPointers.addAll(other.assessmentPointers);
    faults.addAll(other.faults);
    unmapped.addAll(other.unmapped);
    codes.addAll(other.codes);
  }

  void fault(String pointer, Rule rule, String detail) {
    faults.add(new Fault(pointer, rule.word(), detail));
  }

  void unmapped(String pointer, Optional<UnmappedCode> code) {
    code.ifPresent(codes::add);
    unmapped.add(
        new Fault(pointer, Rule.UNMAPPED_CODE.word(), "The catalogue has no such finding"));
  }

  /** A fault of the n-th change, at the resource it came from. */
  Fault ofChange(int index, Fault fault) {
    return new Fault(changePointers.get(index), fault.rule(), fault.detail());
  }

  /**
   * A fault of the n-th assessment, as intake counts them, at the resource it came from. The rest
   * of the pointer would lead into our own words, which the sender has never seen.
   */
  Fault ofAssessment(Fault fault) {
    var parts = fault.pointer().split("/", 3);
    int index =
        parts.length > 1 && parts[1].matches("[0-9]{1,9}") ? Integer.parseInt(parts[1]) : -1;
    return index < 0 || index >= assessmentPointers.size()
        ? fault
        : new Fault(assessmentPointers.get(index), fault.rule(), fault.detail());
  }
}
