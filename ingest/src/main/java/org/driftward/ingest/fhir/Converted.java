package org.driftward.ingest.fhir;

import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;

/**
 * What a FHIR request says in our words, gathered while it is read.
 *
 * <p>{@code unmapped} are observations of things the catalogue does not know: reported and kept,
 * but no reason to refuse the rest. {@code faults} refuse.
 */
final class Converted {

  final List<Encounter> encounters = new ArrayList<>();
  final List<Assessment> assessments = new ArrayList<>();
  final List<Fault> faults = new ArrayList<>();
  final List<Fault> unmapped = new ArrayList<>();

  void fault(String pointer, String rule, String detail) {
    faults.add(new Fault(pointer, rule, detail));
  }
}
