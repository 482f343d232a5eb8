package org.driftward.ingest.hl7;

import ca.uhn.hl7v2.model.Message;
import java.util.List;
import java.util.Optional;

/**
 * A parsed message: its segments in order, without any grouping, so that a segment which a version
 * of the standard puts elsewhere, or does not know, is still found.
 */
record Hl7Message(Message message, Header header, List<Hl7Segment> segments) {

  Hl7Message {
    segments = List.copyOf(segments);
  }

  /** The first segment of the name. */
  Optional<Hl7Segment> first(String name) {
    return segments.stream().filter(segment -> segment.is(name)).findFirst();
  }

  /**
   * What the header says.
   *
   * @param feed sending application and facility, MSH-3 and MSH-4
   * @param type for example {@code ORU}
   * @param event for example {@code R01}
   */
  record Header(
      String feed, String type, String event, String processing, String version, String charset) {

    static Header of(Hl7Segment msh) {
      return new Header(
          "hl7:" + msh.value(3) + "|" + msh.value(4),
          msh.value(9),
          msh.value(9, 2),
          msh.value(11),
          msh.value(12),
          msh.value(18));
    }
  }

  @Override
  public String toString() {
    return "Hl7Message[" + segments.size() + " segments]";
  }
}
