package org.driftward.ingest.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.Line;
import org.driftward.ingest.contract.IntakeDesk.Replay;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.ingest.store.DeskLedger.Batch;
import org.driftward.ingest.store.DeskLedger.OvertakenException;
import org.driftward.ingest.store.DeskLedger.Slot;
import org.driftward.ingest.store.DeskLedger.Span;
import org.junit.jupiter.api.Test;

/** The desk on a real PostgreSQL, with no more rights than the application has. */
class StoredIntakeDeskTest {

  private static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  private static final Sight ENGINEER = new Sight("engineer", WardScope.EVERY_WARD);
  private static final Slot SLOT = new Slot("driftward.rejected", 0);
  private static final byte[] NOT_TEXT = {0, -1, 13, 10, 34};

  private final IntakeDatabase database = new IntakeDatabase();
  private final Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
  private final DeskLedger ledger = new DeskLedger(database.database, clock);
  private final ReplayQueue queue = new ReplayQueue(database.database, clock);
  private final StoredIntakeDesk desk =
      new StoredIntakeDesk(database.database, new Imports(database.database), clock);
  private long offset;

  @Test
  void shouldShowTheExactBytesBesideTheReasons() {
    keep(refusal("R-1", "http/lab", Source.HL7, NOT_TEXT, "wrong-unit"));

    var found = desk.refusal("R-1", ENGINEER).orElseThrow();

    assertThat(found.bytes()).isEqualTo(Bytes.of(NOT_TEXT));
    assertThat(found.line().faults()).extracting(Fault::rule).containsExactly("wrong-unit");
    assertThat(found.line().state()).isEqualTo(State.OPEN);
  }

  @Test
  void shouldPageThroughThemNewestFirst() {
    IntStream.range(0, 60)
        .forEach(i -> keep(refusal("R-%02d".formatted(i), "o", Source.FHIR, new byte[0], "x")));

    var ids = new ArrayList<String>();
    var filter = Filter.OPEN;
    for (var page = desk.refusals(filter, ENGINEER); ; page = desk.refusals(filter, ENGINEER)) {
      page.lines().forEach(line -> ids.add(line.id()));
      if (page.next() == null) {
        break;
      }
      filter = new Filter(null, null, null, null, true, page.next());
    }

    assertThat(ids).hasSize(60).doesNotHaveDuplicates();
    assertThat(ids.get(0)).isEqualTo("R-59");
  }

  @Test
  void shouldFilterBySourceAndReason() {
    keep(
        refusal("R-1", "o", Source.FHIR, new byte[0], "wrong-unit"),
        refusal("R-2", "o", Source.HL7, new byte[0], "wrong-unit"),
        refusal("R-3", "o", Source.HL7, new byte[0], "unmapped-code"));

    assertThat(ids(new Filter(Source.HL7, "wrong-unit", null, null, true, null)))
        .containsExactly("R-2");
    assertThat(ids(new Filter(null, null, NOW.plusSeconds(1), null, true, null))).isEmpty();
    assertThat(desk.refusals(Filter.OPEN, ENGINEER).rules())
        .containsExactly("unmapped-code", "wrong-unit");
  }

  @Test
  void shouldShowAnAccountOfSomeWardsOnlyWhatItSentItself() {
    keep(
        refusal("R-1", "http/lab", Source.FHIR, new byte[0], "x"),
        refusal("R-2", "http/other", Source.FHIR, new byte[0], "x"));
    var lab = new Sight("lab", WardScope.of(Set.of("ward-a")));

    assertThat(desk.refusals(Filter.OPEN, lab).lines()).extracting(Line::id).containsExactly("R-1");
    assertThat(desk.refusal("R-2", lab)).isEmpty();
    assertThat(desk.replay("R-2", null, lab)).isFalse();
  }

  @Test
  void shouldJournalAReplayAndWhatBecameOfIt() {
    keep(refusal("R-1", "http/lab", Source.FHIR, NOT_TEXT, "x"));

    assertThat(desk.replay("R-1", null, ENGINEER)).isTrue();
    assertThat(desk.replay("R-1", null, ENGINEER)).as("while one is waiting").isFalse();
    assertThat(desk.refusal("R-1", ENGINEER).orElseThrow().line().state()).isEqualTo(State.WAITING);
    var played = new ArrayList<Received>();
    queue.play(
        (received, bearer) -> {
          played.add(received);
          return new Passage(false, List.of(new Fault("/a", "still-wrong", "no")));
        });
    assertThat(desk.replay("R-1", Bytes.of("mended".getBytes(UTF_8)), ENGINEER)).isTrue();
    queue.play(
        (received, bearer) -> {
          played.add(received);
          assertThat(bearer).isEqualTo(new Bearer("engineer", WardScope.EVERY_WARD));
          return new Passage(true, List.of());
        });

    assertThat(played.get(0).bytes()).isEqualTo(NOT_TEXT);
    assertThat(played.get(0).replayOf()).isEqualTo("R-1");
    assertThat(played.get(1).bytes()).isEqualTo("mended".getBytes(UTF_8));
    assertThat(queue.play((received, bearer) -> new Passage(true, List.of()))).isFalse();
    var found = desk.refusal("R-1", ENGINEER).orElseThrow();
    assertThat(found.bytes()).as("the original").isEqualTo(Bytes.of(NOT_TEXT));
    assertThat(found.replays())
        .extracting(Replay::state)
        .containsExactly(State.ACCEPTED, State.REFUSED);
    assertThat(ids(Filter.OPEN)).isEmpty();
  }

  @Test
  void shouldKeepAReplayWaitingWhenItCannotBeDone() {
    keep(refusal("R-1", "o", Source.FHIR, NOT_TEXT, "x"));
    desk.replay("R-1", null, ENGINEER);

    assertThatThrownBy(
            () ->
                queue.play(
                    (received, bearer) -> {
                      throw new IllegalStateException("Kafka is away");
                    }))
        .hasMessageContaining("Kafka is away");

    assertThat(queue.play((received, bearer) -> new Passage(true, List.of()))).isTrue();
  }

  @Test
  void shouldReplayAllThatTheFilterFinds() {
    keep(
        refusal("R-1", "o", Source.FHIR, new byte[0], "unmapped-code"),
        refusal("R-2", "o", Source.HL7, new byte[0], "wrong-unit"),
        refusal("R-3", "o", Source.HL7, new byte[0], "unmapped-code"));
    var unmapped = new Filter(null, "unmapped-code", null, null, true, null);

    assertThat(desk.replayAll(unmapped, ENGINEER)).isEqualTo(2);
    assertThat(desk.replayAll(unmapped, ENGINEER)).as("again").isZero();
  }

  @Test
  void shouldNotListAReplayThatIsRefusedAgainAsANewRefusal() {
    var received = received("o", Source.FHIR, NOT_TEXT).asReplayOf("R-1").named("replay-1");
    keep(Rejection.of("ignored", received, NOW, List.of(new Fault("", "x", "no"))));

    assertThat(ids(Filter.OPEN)).isEmpty();
    assertThat(desk.refusal("replay-1", ENGINEER)).isPresent();
  }

  @Test
  void shouldLetNobodyChangeWhatWasRefusedNorWhatWasDone() {
    keep(refusal("R-1", "o", Source.FHIR, NOT_TEXT, "x"));
    desk.replay("R-1", null, ENGINEER);
    queue.play((received, bearer) -> new Passage(true, List.of()));

    for (var table : List.of("refusal", "replay", "replay_outcome")) {
      assertThatThrownBy(
              () -> IntakeDatabase.execute(database.owner, "DELETE FROM ingest." + table))
          .hasMessageContaining("append-only");
      assertThatThrownBy(
              () ->
                  database.database.read(
                      handle -> handle.createUpdate("DELETE FROM ingest." + table).execute()))
          .hasMessageContaining("permission denied");
    }
  }

  @Test
  void shouldCountEachFeedOnceHoweverOftenItsRecordsAreRead() {
    var taken = NOW.minus(Duration.ofMinutes(10));
    var first =
        FeedMinute.assessment(Source.HL7, "mllp/lab", taken, taken.plusSeconds(60), NOW)
            .plus(
                FeedMinute.assessment(Source.HL7, "mllp/lab", taken, taken.plusSeconds(120), NOW));
    var batch = new Batch(Map.of(SLOT, new Span(0, 2)), List.of(first), List.of());

    ledger.keep(batch);
    assertThatExceptionOfType(OvertakenException.class).isThrownBy(() -> ledger.keep(batch));
    ledger.keep(
        new Batch(
            Map.of(SLOT, new Span(2, 3)),
            List.of(FeedMinute.refused(Source.HL7, "mllp/lab", NOW)),
            List.of()));

    assertThat(ledger.position(SLOT)).hasValue(3);
    assertThat(desk.feeds())
        .containsExactly(
            new Feed(
                Source.HL7,
                "mllp/lab",
                NOW,
                2,
                0,
                1,
                3,
                Duration.ofSeconds(90),
                Duration.ofMinutes(10).minusSeconds(90)));
  }

  private List<String> ids(Filter filter) {
    return desk.refusals(filter, ENGINEER).lines().stream().map(Line::id).toList();
  }

  private void keep(Rejection... refusals) {
    var span = new Span(offset, offset + refusals.length);
    offset += refusals.length;
    ledger.keep(new Batch(Map.of(SLOT, span), List.of(), List.of(refusals)));
  }

  private static Rejection refusal(
      String id, String origin, Source source, byte[] bytes, String rule) {
    var fault = new Fault("/a", rule, "no");
    return Rejection.of(id, received(origin, source, bytes), NOW, List.of(fault));
  }

  private static Received received(String origin, Source source, byte[] bytes) {
    return new Received(origin, source, "POST /fhir", "application/json", bytes);
  }
}
