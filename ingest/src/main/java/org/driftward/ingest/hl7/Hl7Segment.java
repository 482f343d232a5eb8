package org.driftward.ingest.hl7;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.util.Terser;

/**
 * One segment of a parsed message, read by numbers as the standard counts them, from 1; repetitions
 * count from 0. What is not there reads as the empty string, and so does the HL7 null {@code ""}:
 * to us neither says anything.
 *
 * @param name for example {@code OBX}
 * @param sequence counts the segments of this name in the message from 1
 */
record Hl7Segment(String name, int sequence, Segment segment) {

  private static final String NULL = "\"\"";

  boolean is(String other) {
    return name.equals(other);
  }

  /** The first component. */
  String value(int field) {
    return value(field, 0, 1, 1);
  }

  String value(int field, int component) {
    return value(field, 0, component, 1);
  }

  String value(int field, int repetition, int component, int subcomponent) {
    try {
      if (repetition >= repetitions(field)) {
        return "";
      }
      var value = Terser.get(segment, field, repetition, component, subcomponent);
      return value == null || value.equals(NULL) ? "" : value.strip();
    } catch (HL7Exception e) {
      return "";
    }
  }

  int repetitions(int field) {
    try {
      return field > segment.numFields() ? 0 : segment.getField(field).length;
    } catch (HL7Exception e) {
      return 0;
    }
  }

  /** Where the field is, as a fault names it. */
  String pointer(int field) {
    return "/" + name + "/" + sequence + "/" + field;
  }

  /** Names no content. */
  @Override
  public String toString() {
    return "Hl7Segment[" + name + " " + sequence + "]";
  }
}
