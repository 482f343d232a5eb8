package org.driftward.ingest.hl7;

import ca.uhn.hl7v2.AcknowledgmentCode;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.util.Terser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.driftward.ingest.contract.Fault;

/**
 * The answer to a message, in original mode: MSH and MSA by the HL7 v2 library, and one ERR for
 * each fault. From version 2.5 on ERR is written by its fields 2 to 8; before, there are only ERR-1
 * and the text in MSA-3.
 */
final class Acknowledgement {

  /** An answer stays small, however much is wrong. */
  private static final int MOST_ERRORS = 50;

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyyMMddHHmmssZ").withZone(ZoneOffset.UTC);

  private final Hl7Message to;
  private final Message answer;

  private Acknowledgement(Hl7Message to, AcknowledgmentCode code, Instant now)
      throws HL7Exception, IOException {
    this.to = to;
    this.answer = to.message().generateACK(code, null);
    var msh = (Segment) answer.get("MSH");
    Terser.set(msh, 7, 0, 1, 1, TIME.format(now));
    Terser.set(msh, 18, 0, 1, 1, to.header().charset());
  }

  static byte[] of(Hl7Message to, Verdict verdict, Instant now) {
    try {
      var answer = new Acknowledgement(to, code(verdict), now);
      answer.explain(verdict);
      return answer.bytes();
    } catch (HL7Exception | IOException e) {
      throw new IllegalStateException("a message that was read cannot be answered", e);
    }
  }

  private static AcknowledgmentCode code(Verdict verdict) {
    if (verdict instanceof Verdict.Kept) {
      return AcknowledgmentCode.AA;
    }
    return verdict instanceof Verdict.Rejected ? AcknowledgmentCode.AR : AcknowledgmentCode.AE;
  }

  private void explain(Verdict verdict) throws HL7Exception {
    if (verdict instanceof Verdict.Kept kept) {
      errors(kept.warnings(), "W");
    } else if (verdict instanceof Verdict.Refused refused) {
      errors(refused.faults(), "E");
    } else if (verdict instanceof Verdict.Rejected rejected) {
      error(0, rejected.code(), rejected.fault(), "E");
    } else {
      var later = new Fault("", "unavailable", "Not kept; please send the same message again");
      error(0, ErrorCode.INTERNAL_ERROR, later, "E");
    }
  }

  private void errors(List<Fault> faults, String severity) throws HL7Exception {
    for (int i = 0; i < Math.min(faults.size(), MOST_ERRORS); i++) {
      error(i, ErrorCode.of(faults.get(i).rule()), faults.get(i), severity);
    }
  }

  private void error(int index, ErrorCode code, Fault fault, String severity) throws HL7Exception {
    var err = (Segment) answer.get("ERR", index);
    var place = fault.pointer().split("/", -1);
    if (isOld()) {
      for (int i = 1; i < Math.min(place.length, 4); i++) {
        Terser.set(err, 1, 0, i, 1, place[i]);
      }
      Terser.set(err, 1, 0, 4, 1, Integer.toString(code.code()));
      Terser.set(err, 1, 0, 4, 2, code.words());
      if (index == 0) {
        Terser.set((Segment) answer.get("MSA"), 3, 0, 1, 1, shortened(fault.detail()));
      }
      return;
    }
    for (int i = 1; i < Math.min(place.length, 4); i++) {
      Terser.set(err, 2, 0, i, 1, place[i]);
    }
    Terser.set(err, 3, 0, 1, 1, Integer.toString(code.code()));
    Terser.set(err, 3, 0, 2, 1, code.words());
    Terser.set(err, 3, 0, 3, 1, "HL70357");
    Terser.set(err, 4, 0, 1, 1, severity);
    Terser.set(err, 7, 0, 1, 1, fault.rule());
    Terser.set(err, 8, 0, 1, 1, fault.detail());
  }

  /** Versions compare as texts as long as the second digit is one. */
  private boolean isOld() {
    return to.header().version().compareTo("2.5") < 0;
  }

  /** MSA-3 holds 80 characters. */
  private static String shortened(String text) {
    return text.length() <= 80 ? text : text.substring(0, 80);
  }

  private byte[] bytes() throws HL7Exception {
    var charset = Charsets.find(to.header().charset()).orElse(StandardCharsets.UTF_8);
    return answer.encode().getBytes(charset);
  }
}
