package org.driftward.ingest.contract;

/**
 * The topics of the flow. Every one is keyed by encounter, but {@link #INBOX} as its senders like
 * and {@link #REJECTED} by source, and all have the same number of partitions so that one
 * encounter's records meet in one place.
 */
public enum Topic {
  /** What others send, unchecked: the one topic that is not written by us alone. */
  INBOX("driftward.inbox", false),
  /** Accepted assessments, revisions and retractions. */
  ASSESSMENTS("driftward.assessments", false),
  /** Who, where: admission, transfer, discharge. */
  ENCOUNTERS("driftward.encounters", true),
  /** The signed clinical settings, every version: moments of the past are judged by theirs. */
  CARE_PLANS("driftward.care-plans", false),
  /** What scoring says, one record for each clinical moment and revision of it. */
  SNAPSHOTS("driftward.snapshots", false),
  /** Every change of an episode. */
  EPISODES("driftward.episodes", false),
  /** What was refused, byte for byte, with the reasons. */
  REJECTED("driftward.rejected", false);

  private final String topic;
  private final boolean compacted;

  Topic(String topic, boolean compacted) {
    this.topic = topic;
    this.compacted = compacted;
  }

  public String topic() {
    return topic;
  }

  /**
   * The largest record in bytes, for {@code max.message.bytes} of the topic. A refused input is
   * kept whole, in Base64, with its faults.
   */
  public int largestRecord() {
    return switch (this) {
      case INBOX -> 4 << 20;
      case REJECTED -> 12 << 20;
      default -> 1 << 20;
    };
  }

  public boolean compacted() {
    return compacted;
  }
}
