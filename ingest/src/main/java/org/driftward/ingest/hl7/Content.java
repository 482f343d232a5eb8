package org.driftward.ingest.hl7;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.core.Rule;

/**
 * What a message says in our words, gathered while it is read. Used by one thread.
 *
 * <p>{@code faults} refuse the message; {@code unmapped} are results of things that the catalogue
 * does not know: reported and kept, but no reason to refuse the rest. {@code codes} are theirs.
 */
final class Content {

  private static final Pattern INTAKES_POINTER = Pattern.compile("/(\\d{1,6})(?:/([a-zA-Z]+).*)?");

  final List<EncounterChange> changes = new ArrayList<>();
  final List<Assessment> assessments = new ArrayList<>();
  final List<Fault> faults = new ArrayList<>();
  final List<Fault> unmapped = new ArrayList<>();
  final List<UnmappedCode> codes = new ArrayList<>();
  private final List<Hl7Segment> results = new ArrayList<>();

  void add(Assessment assessment, Hl7Segment obx) {
    assessments.add(assessment);
    results.add(obx);
  }

  void fault(String pointer, Rule rule, String detail) {
    faults.add(new Fault(pointer, rule.word(), detail));
  }

  /** The value, or empty with a fault that the field is needed. */
  Optional<String> required(Hl7Segment segment, int field, String what) {
    var value = segment.value(field);
    if (value.isEmpty()) {
      fault(segment.pointer(field), Rule.MISSING_FIELD, what + " is needed");
      return Optional.empty();
    }
    return Optional.of(value);
  }

  /**
   * A fault as intake counts, in assessments, at the field of the message it came from: the sender
   * has never seen our words.
   */
  Fault inTheMessage(Fault fault) {
    var matcher = INTAKES_POINTER.matcher(fault.pointer());
    if (!matcher.matches()) {
      return fault;
    }
    int index = Integer.parseInt(matcher.group(1));
    if (index >= results.size()) {
      return fault;
    }
    var obx = results.get(index);
    var part = matcher.group(2) == null ? "" : matcher.group(2);
    var pointer =
        switch (part) {
          case "encounter" -> "/PV1/1/19";
          case "patient" -> "/PID/1/3";
          case "recordedAt" -> "/MSH/1/7";
          case "takenAt" -> obx.pointer(14);
          case "status", "revision" -> obx.pointer(11);
          case "by" -> obx.pointer(16);
          default -> obx.pointer(5);
        };
    return new Fault(pointer, fault.rule(), fault.detail());
  }
}
