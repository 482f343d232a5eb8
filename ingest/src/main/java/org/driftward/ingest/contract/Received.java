package org.driftward.ingest.contract;

import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment.Source;
import org.jspecify.annotations.Nullable;

/**
 * What came in, as it came: kept byte for byte if it is refused. Immutable, thread-safe; equal only
 * to itself.
 */
public final class Received {

  /** So many are named; a message of more names the first. */
  private static final int MOST_UNMAPPED = 200;

  private final String origin;
  private final Source source;
  private final String target;
  private final String contentType;
  private final byte[] bytes;
  private final @Nullable String refusal;
  private final @Nullable String replayOf;
  private final List<UnmappedCode> unmapped;

  /**
   * @param origin who sends, for example an account or a feed; the key of {@link Topic#REJECTED}.
   *     Never a patient's data
   * @param source the way it came in
   * @param target what it was sent to, so that it can be sent there again once mended, for example
   *     {@code PUT /api/encounters/V-1}
   * @param contentType media type of the bytes
   */
  public Received(String origin, Source source, String target, String contentType, byte[] bytes) {
    this(origin, source, target, contentType, bytes.clone(), null, null, List.of());
  }

  private Received(
      String origin,
      Source source,
      String target,
      String contentType,
      byte[] bytes,
      @Nullable String refusal,
      @Nullable String replayOf,
      List<UnmappedCode> unmapped) {
    this.origin = Objects.requireNonNull(origin, "origin");
    this.source = Objects.requireNonNull(source, "source");
    this.target = Objects.requireNonNull(target, "target");
    this.contentType = Objects.requireNonNull(contentType, "contentType");
    this.bytes = bytes;
    this.refusal = refusal;
    this.replayOf = replayOf;
    this.unmapped = unmapped;
  }

  /**
   * The same under a name of its own: should it be refused, the refusal has this id. An input that
   * may be read twice, because a crash came between, is so kept once.
   */
  public Received named(String id) {
    return new Received(origin, source, target, contentType, bytes, id, replayOf, unmapped);
  }

  /** The same as a new attempt for an earlier refusal. */
  public Received asReplayOf(String earlier) {
    return new Received(origin, source, target, contentType, bytes, refusal, earlier, unmapped);
  }

  /**
   * The same, once it is known which of its codes nobody has mapped: a refusal of it names them.
   */
  public Received withUnmapped(List<UnmappedCode> codes) {
    var named = codes.stream().distinct().limit(MOST_UNMAPPED).toList();
    return new Received(origin, source, target, contentType, bytes, refusal, replayOf, named);
  }

  /** The codes in it that nobody has mapped, as far as it was read. */
  public List<UnmappedCode> unmapped() {
    return unmapped;
  }

  /** The id that its refusal shall have, or null for a new one. */
  public @Nullable String refusal() {
    return refusal;
  }

  /** The refusal that it tries to mend, or null if it came in for the first time. */
  public @Nullable String replayOf() {
    return replayOf;
  }

  public String origin() {
    return origin;
  }

  public Source source() {
    return source;
  }

  public String target() {
    return target;
  }

  public String contentType() {
    return contentType;
  }

  public byte[] bytes() {
    return bytes.clone();
  }

  @Override
  public String toString() {
    return "Received[" + bytes.length + " bytes by " + source.word() + "]";
  }
}
