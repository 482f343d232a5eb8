package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment.Source;
import org.jspecify.annotations.Nullable;

/**
 * One refused input, byte for byte, with every reason: a record of {@link Topic#REJECTED}.
 *
 * @param id names this refusal
 * @param origin who sent it; the record's key
 * @param source the way it came in
 * @param target what it was sent to
 * @param receivedAt when it was refused
 * @param contentType media type of the bytes
 * @param base64 the exact bytes, in Base64 (RFC 4648)
 * @param faults every fault found, in the order of the input
 * @param replayOf the earlier refusal that it was an attempt to mend, or null
 * @param unmapped the codes in it that nobody had mapped, or null where there were none
 */
public record Rejection(
    String id,
    String origin,
    Source source,
    String target,
    Instant receivedAt,
    String contentType,
    String base64,
    List<Fault> faults,
    @Nullable String replayOf,
    @Nullable List<UnmappedCode> unmapped) {

  public Rejection {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(origin, "origin");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(target, "target");
    Objects.requireNonNull(receivedAt, "receivedAt");
    Objects.requireNonNull(contentType, "contentType");
    Objects.requireNonNull(base64, "base64");
    faults = List.copyOf(faults);
    unmapped = unmapped == null || unmapped.isEmpty() ? null : List.copyOf(unmapped);
  }

  /** A refusal of what came in for the first time. */
  public Rejection(
      String id,
      String origin,
      Source source,
      String target,
      Instant receivedAt,
      String contentType,
      String base64,
      List<Fault> faults) {
    this(id, origin, source, target, receivedAt, contentType, base64, faults, null, null);
  }

  /**
   * @param id where {@link Received#refusal()} says none
   */
  public static Rejection of(String id, Received received, Instant receivedAt, List<Fault> faults) {
    var named = received.refusal();
    return new Rejection(
        named == null ? id : named,
        received.origin(),
        received.source(),
        received.target(),
        receivedAt,
        received.contentType(),
        Base64.getEncoder().encodeToString(received.bytes()),
        faults,
        received.replayOf(),
        received.unmapped());
  }

  /** The exact bytes that came in. */
  public byte[] bytes() {
    return Base64.getDecoder().decode(base64);
  }

  /** Which refusal it is, never what it holds. */
  @Override
  public String toString() {
    return "Rejection[" + id + "]";
  }
}
