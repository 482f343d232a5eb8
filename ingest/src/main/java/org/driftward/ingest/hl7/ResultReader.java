package org.driftward.ingest.hl7;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.Meaning;
import org.driftward.ingest.core.mapping.Systems;
import org.jspecify.annotations.Nullable;

/**
 * ORU^R01: every OBX becomes one assessment with one finding, so that a correction of one result is
 * a revision of it and leaves its neighbours alone. Thread-safe.
 */
final class ResultReader {

  private static final int SITE = 20;

  private final Catalogue catalogue;
  private final CodeMap codes;
  private final PatientReader patients;
  private final ValueReader values;

  ResultReader(Catalogue catalogue, CodeMap codes, PatientReader patients) {
    this.catalogue = catalogue;
    this.codes = codes;
    this.patients = patients;
    this.values = new ValueReader(codes);
  }

  /** What is the same for every result of a message. */
  private record Frame(
      String feed, String encounter, String patient, @Nullable Instant made, Hl7Time times) {}

  void read(Hl7Message message, Hl7Time times, Content into) {
    var pid = message.first("PID");
    var pv1 = message.first("PV1");
    if (pid.isEmpty() || pv1.isEmpty()) {
      into.fault("", Rule.MISSING_FIELD, "PID and PV1 are needed");
      return;
    }
    var patient = patients.number(pid.get(), 3, into);
    var encounter = into.required(pv1.get(), 19, "The visit number");
    if (patient.isEmpty() || encounter.isEmpty()) {
      return;
    }
    var made = times.moment(message.segments().get(0).value(7)).orElse(null);
    var frame = new Frame(message.header().feed(), encounter.get(), patient.get(), made, times);
    results(message.segments(), frame, into);
  }

  private void results(List<Hl7Segment> segments, Frame frame, Content into) {
    Hl7Segment obr = null;
    boolean any = false;
    for (var segment : segments) {
      if (segment.is("OBR")) {
        obr = segment;
      } else if (segment.is("OBX")) {
        any = true;
        result(obr, segment, frame, into);
      }
    }
    if (!any) {
      into.fault("/OBX/1", Rule.NO_FINDINGS, "A message of results without OBX");
    }
  }

  private void result(@Nullable Hl7Segment obr, Hl7Segment obx, Frame frame, Content into) {
    var status = ResultStatus.of(obx.value(11));
    if (status.isEmpty()) {
      into.fault(
          obx.pointer(11),
          Rule.UNUSABLE_STATUS,
          "The status must be one of C, D, F, I, N, O, P, R, S, U, W, X");
      return;
    }
    var code = into.required(obx, 3, "What was observed");
    if (status.get() == ResultStatus.NO_RESULT || code.isEmpty()) {
      return;
    }
    var foreign = new ForeignCode(frame.feed(), obx.value(3, 3), code.get());
    var meaning = codes.find(foreign);
    var entry = meaning.flatMap(found -> catalogue.find(found.finding()));
    if (meaning.isEmpty() || entry.isEmpty()) {
      unmapped(foreign, obx, into);
      return;
    }
    var takenAt = takenAt(obr, obx, frame.times(), into);
    var finding =
        status.get() == ResultStatus.WITHDRAWN
            ? List.<Finding>of()
            : finding(entry.get(), meaning.get(), obx, into).stream().toList();
    boolean complete = !finding.isEmpty() || status.get() == ResultStatus.WITHDRAWN;
    if (takenAt.isPresent() && complete) {
      into.add(assessment(obr, obx, frame, status.get(), takenAt.get(), finding), obx);
    }
  }

  private static Assessment assessment(
      @Nullable Hl7Segment obr,
      Hl7Segment obx,
      Frame frame,
      ResultStatus status,
      Instant takenAt,
      List<Finding> finding) {
    var observer = obx.value(16);
    return new Assessment(
        ResultIdentity.id(frame.encounter(), obr, obx, takenAt),
        ResultIdentity.revision(frame.made(), status),
        status.assessment(),
        frame.encounter(),
        frame.patient(),
        takenAt,
        frame.made() == null ? takenAt : frame.made(),
        Assessment.Source.HL7,
        observer.isEmpty() ? frame.feed() : observer,
        status == ResultStatus.HOLDS ? null : "OBX-11 " + obx.value(11),
        finding);
  }

  private static void unmapped(ForeignCode code, Hl7Segment obx, Content into) {
    UnmappedCode.of(code.source(), code.system(), code.code(), obx.value(3, 2), obx.value(6))
        .ifPresent(into.codes::add);
    into.unmapped.add(
        new Fault(
            obx.pointer(3),
            Rule.UNMAPPED_CODE.word(),
            "not mapped: \"" + code.code() + "\" of \"" + code.system() + "\""));
  }

  /** When it was true: OBX-14, else OBR-7. */
  private static Optional<Instant> takenAt(
      @Nullable Hl7Segment obr, Hl7Segment obx, Hl7Time times, Content into) {
    boolean own = !obx.value(14).isEmpty() || obr == null;
    var pointer = own || obr == null ? obx.pointer(14) : obr.pointer(7);
    var text = own || obr == null ? obx.value(14) : obr.value(7);
    var moment = times.moment(text);
    if (moment.isEmpty()) {
      into.fault(
          pointer,
          Rule.MALFORMED_TIME,
          "When it was true, to the minute, is not said"
              + (times.zone() == null ? "; a time needs an offset, or the site a time zone" : ""));
    }
    return moment;
  }

  private Optional<Finding> finding(
      CatalogueEntry entry, Meaning meaning, Hl7Segment obx, Content into) {
    var own = new ArrayList<String>();
    for (int i = 0; i < obx.repetitions(SITE); i++) {
      if (Systems.isOurs(obx.value(SITE, i, 3, 1))) {
        own.add(obx.value(SITE, i, 1, 1));
      }
    }
    var site =
        meaning.site() != null
            ? meaning.site()
            : own.stream().filter(entry.sites()::contains).findFirst().orElse(null);
    var side = meaning.side() != null ? meaning.side() : side(own);
    if (obx.value(5).isEmpty() && obx.value(5, 2).isEmpty()) {
      into.fault(obx.pointer(5), Rule.MISSING_FIELD, "A result of this status has a value");
      return Optional.empty();
    }
    return values
        .read(entry, meaning, obx, into)
        .map(value -> new Finding(new FindingKey(entry.code(), site, side), value));
  }

  private static @Nullable Side side(List<String> words) {
    for (var side : Side.values()) {
      if (words.contains(side.word())) {
        return side;
      }
    }
    return null;
  }
}
