package org.driftward.ingest.hl7;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.PatientEncounters;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.hl7.Hl7Format.NotHl7Exception;

/**
 * One HL7 v2 message in, its acknowledgement out, whatever carried it. Blocks until Kafka has
 * acknowledged what the message leads to; what is refused is kept with its reasons before the
 * answer. Thread-safe.
 */
@Singleton
public final class Hl7Door {

  /** Media type of the delimited encoding. */
  public static final String MEDIA_TYPE = "application/hl7-v2+er7";

  /** Where whole messages are sent to, so that they can be replayed. */
  public static final String TARGET = "MLLP";

  /**
   * Where parts of messages are kept as sent to. No gate takes them: cut off inside a number, a
   * part would say what its sender never said.
   */
  static final String TARGET_OF_PARTS = "MLLP, cut off";

  private static final int KEPT_OF_TOO_LARGE = 1 << 16;

  private static final Pattern VERSION =
      Pattern.compile("2\\.(3(\\.1)?|4|5(\\.1)?|6|7(\\.1)?|8(\\.[12])?)");
  private static final Set<String> MOVES = Set.of("A01", "A02", "A03", "A08", "A11", "A12", "A13");

  private final AssessmentIntake intake;
  private final Hl7Format format;
  private final SiteSettings settings;
  private final PatientEncounters encounters;
  private final PatientReader patients;
  private final ResultReader results;
  private final MoveReader moves;
  private final MergeReader merges;
  private final Clock clock;

  @Inject
  public Hl7Door(
      AssessmentIntake intake,
      EncounterDirectory directory,
      PatientEncounters encounters,
      Catalogue catalogue,
      CodeMap codes,
      IngestConfig config,
      Clock clock) {
    this.intake = intake;
    this.format = new Hl7Format();
    this.settings =
        new SiteSettings(
            config.mllp().zone(),
            config.mllp().processingId(),
            config.mllp().patientAuthority(),
            config.clockSkew());
    this.encounters = encounters;
    this.patients = new PatientReader(settings);
    this.results = new ResultReader(catalogue, codes, patients);
    this.moves = new MoveReader(settings, patients, directory);
    this.merges = new MergeReader(patients, directory, encounters);
    this.clock = clock;
  }

  private Hl7Door(AssessmentIntake intake, EncounterDirectory directory, Hl7Door like) {
    this.intake = intake;
    this.format = like.format;
    this.settings = like.settings;
    this.encounters = like.encounters;
    this.patients = like.patients;
    this.results = like.results;
    this.moves = new MoveReader(settings, patients, directory);
    this.merges = new MergeReader(patients, directory, encounters);
    this.clock = like.clock;
  }

  /** The same door in front of another intake. */
  Hl7Door over(AssessmentIntake another, EncounterDirectory directory) {
    return new Hl7Door(another, directory, this);
  }

  /**
   * @param message the bytes between the frames
   * @return the acknowledgement, likewise
   */
  public byte[] take(byte[] message) {
    var now = clock.instant();
    try {
      var read = format.read(message);
      var received = received(read.header().feed(), message);
      return Acknowledgement.of(read, orUnavailable(() -> judge(read, received)), now);
    } catch (NotHl7Exception e) {
      var received = received("hl7:unreadable", message);
      return Acknowledgement.of(
          format.substitute(message), orUnavailable(() -> kept(received, unreadable(e))), now);
    }
  }

  /**
   * What came in before, once more; its answer goes to nobody.
   *
   * @param before keeps its origin, whatever feed the bytes name now
   */
  Verdict takeAgain(Received before) {
    try {
      var read = format.read(before.bytes());
      return orUnavailable(() -> judge(read, before));
    } catch (NotHl7Exception e) {
      return orUnavailable(() -> kept(before, unreadable(e)));
    }
  }

  private static Verdict.Rejected unreadable(NotHl7Exception e) {
    return new Verdict.Rejected(ErrorCode.DATA_TYPE_ERROR, e.fault());
  }

  /**
   * The answer to a message that is larger than is taken. Its first part is kept, so that its
   * sender can be found.
   *
   * @param beginning at least the header
   * @param length of the whole message in bytes, as far as it came
   */
  public byte[] tooLarge(byte[] beginning, long length) {
    var part = Arrays.copyOf(beginning, Math.min(beginning.length, KEPT_OF_TOO_LARGE));
    var substitute = format.substitute(part);
    var fault =
        new Fault(
            "",
            Rule.TOO_MANY.word(),
            "The message has %d bytes, more than is taken; the first %d are kept"
                .formatted(length, part.length));
    var rejected = new Verdict.Rejected(ErrorCode.DATA_TYPE_ERROR, fault);
    var received = part(substitute.header().feed(), part);
    return Acknowledgement.of(
        substitute, orUnavailable(() -> kept(received, rejected)), clock.instant());
  }

  /**
   * Bytes that are no whole message, and that nobody waits to be answered: kept, so that what was
   * lost on the way can be found.
   */
  public void keepBroken(byte[] part, String why) {
    var fault = new Fault("", Rule.MALFORMED_RESOURCE.word(), why);
    orUnavailable(() -> kept(part("hl7:broken", part), new Verdict.Refused(List.of(fault))));
  }

  /** Not to be answered by Kafka is one verdict, however it comes about. */
  private static Verdict orUnavailable(Supplier<Verdict> judging) {
    try {
      return judging.get();
    } catch (UnavailableException e) {
      return new Verdict.Unavailable();
    } catch (CompletionException e) {
      if (e.getCause() instanceof UnavailableException) {
        return new Verdict.Unavailable();
      }
      throw e;
    }
  }

  private Verdict judge(Hl7Message message, Received received) {
    var header = message.header();
    if (!VERSION.matcher(header.version()).matches()) {
      return rejected(received, ErrorCode.UNSUPPORTED_VERSION_ID, 12, "Versions 2.3 to 2.8");
    }
    if (!header.processing().equals(settings.processing())) {
      return rejected(
          received,
          ErrorCode.UNSUPPORTED_PROCESSING_ID,
          11,
          "Only messages of processing id " + settings.processing());
    }
    var times =
        new Hl7Time(
            Hl7Time.zoneOf(message.segments().get(0).value(7), settings.zone()), clock.instant());
    var into = new Content();
    if (header.type().equals("ORU") && header.event().equals("R01")) {
      results.read(message, times, into);
    } else if (header.type().equals("ADT") && MOVES.contains(header.event())) {
      moves.read(message, times, into);
    } else if (header.type().equals("ADT") && header.event().equals("A40")) {
      merges.read(message, into);
    } else {
      return unsupported(header, received);
    }
    return keep(into, received.withUnmapped(into.codes));
  }

  private Verdict unsupported(Hl7Message.Header header, Received received) {
    boolean known = header.type().equals("ORU") || header.type().equals("ADT");
    return rejected(
        received,
        known ? ErrorCode.UNSUPPORTED_EVENT_CODE : ErrorCode.UNSUPPORTED_MESSAGE_TYPE,
        9,
        "ORU^R01 and ADT A01, A02, A03, A08, A11, A12, A13, A40 are taken");
  }

  private Verdict rejected(Received received, ErrorCode code, int field, String why) {
    var fault = new Fault("/MSH/1/" + field, Rule.UNSUPPORTED.word(), why);
    return kept(received, new Verdict.Rejected(code, fault));
  }

  private Verdict keep(Content content, Received received) {
    if (!content.faults.isEmpty()) {
      return kept(received, new Verdict.Refused(content.faults));
    }
    for (var change : content.changes) {
      var outcome = intake.change(received, change).toCompletableFuture().join();
      if (outcome instanceof AssessmentIntake.Outcome.Refused no) {
        return new Verdict.Refused(no.faults());
      }
    }
    if (!content.assessments.isEmpty()) {
      var outcome = accept(received, content.assessments);
      if (outcome instanceof AssessmentIntake.Outcome.Refused no) {
        return new Verdict.Refused(no.faults().stream().map(content::inTheMessage).toList());
      }
    }
    if (!content.unmapped.isEmpty()) {
      intake.refuse(received, content.unmapped).toCompletableFuture().join();
    }
    return new Verdict.Kept(content.unmapped);
  }

  private AssessmentIntake.Outcome accept(Received received, List<Assessment> assessments) {
    return intake.accept(received, assessments).toCompletableFuture().join();
  }

  /** The verdict, once the message is kept with its reasons. */
  private Verdict kept(Received received, Verdict verdict) {
    List<Fault> faults =
        verdict instanceof Verdict.Refused refused
            ? refused.faults()
            : List.of(((Verdict.Rejected) verdict).fault());
    intake.refuse(received, faults).toCompletableFuture().join();
    return verdict;
  }

  private static Received received(String feed, byte[] message) {
    return new Received(origin(feed), Assessment.Source.HL7, TARGET, MEDIA_TYPE, message);
  }

  private static Received part(String feed, byte[] part) {
    return new Received(origin(feed), Assessment.Source.HL7, TARGET_OF_PARTS, MEDIA_TYPE, part);
  }

  /** It becomes a key; what a stranger writes there must not become anything else. */
  private static String origin(String feed) {
    var plain = feed.replaceAll("\\p{Cntrl}", "?");
    return plain.length() <= 128 ? plain : plain.substring(0, 128);
  }
}
