package org.driftward.ingest.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.CodeDesk.Decision;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.CodeDesk.Seen;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.Meaning;
import org.driftward.ingest.mapping.ShippedCodes;
import org.driftward.ingest.store.DeskLedger.Batch;
import org.driftward.ingest.store.DeskLedger.Slot;
import org.driftward.ingest.store.DeskLedger.Span;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Codes on a real PostgreSQL, with no more rights than the application has. */
class StoredCodeDeskTest {

  private static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  private static final Sight ENGINEER = new Sight("engineer", WardScope.EVERY_WARD);
  private static final Slot SLOT = new Slot("driftward.rejected", 0);
  private static final ForeignCode HF = new ForeignCode("hl7:GATEWAY|NORTH", "L", "HF");

  private final IntakeDatabase database = new IntakeDatabase();
  private final Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
  private final DeskLedger ledger = new DeskLedger(database.database, clock);
  private final ReplayQueue queue = new ReplayQueue(database.database, clock);
  private final StoredCodes stored = new StoredCodes(database.database, ShippedCodes.RULES);
  private final StoredCodeDesk desk = desk(stored);
  private long offset;

  @Test
  void shouldListWhatNobodyHasMappedTheMostFrequentFirst() {
    keep(
        refusal("R-1", NOW, seen("RARE", null, null)),
        refusal("R-2", NOW.minusSeconds(60), seen("HF", "Herzfrequenz", "Schlaege")),
        refusal("R-3", NOW, seen("HF", null, "bpm"), seen("HF", null, "Schlaege")));

    assertThat(desk.unmapped(ENGINEER))
        .containsExactly(
            new Seen(
                id("HF"),
                HF,
                "Herzfrequenz",
                List.of("Schlaege", "bpm"),
                2,
                NOW.minusSeconds(60),
                NOW,
                "R-3"),
            new Seen(
                id("RARE"),
                new ForeignCode(HF.source(), "L", "RARE"),
                null,
                List.of(),
                1,
                NOW,
                NOW,
                "R-1"));
  }

  @Test
  void shouldNotCountWhatOneMessageSaysTwiceNorAReplay() {
    keep(
        refusal("R-1", NOW, seen("HF", null, null), seen("HF", "again", null)),
        Rejection.of("R-1", received(seen("HF", null, null)), NOW, faults()),
        Rejection.of("R-2", received(seen("HF", null, null)).asReplayOf("R-1"), NOW, faults()));

    assertThat(desk.unmapped(ENGINEER)).extracting(Seen::messages).containsExactly(1L);
  }

  @Test
  void shouldMeanWhatWasSaidInEveryProcessOnceItHasReadIt() {
    keep(refusal("R-1", NOW, seen("HF", null, "Schlaege")));
    var elsewhere = new StoredCodes(database.database, ShippedCodes.RULES);
    assertThat(elsewhere.codes().find(HF)).isEmpty();

    assertThat(desk.map(id("HF"), heartRate(false), ENGINEER)).isEmpty();
    elsewhere.refresh();

    for (var process : List.of(stored, elsewhere)) {
      assertThat(process.codes().find(HF))
          .contains(
              new Meaning("heart-rate", null, null, "/min", Map.of(), Map.of("Schlaege", "/min")));
    }
    assertThat(stored.codes().find(new ForeignCode("hl7:OTHER|", "L", "HF"))).isEmpty();
    assertThat(desk.unmapped(ENGINEER)).isEmpty();
    assertThat(desk.mapped(ENGINEER))
        .singleElement()
        .satisfies(
            mapped ->
                assertThat(mapped.decision())
                    .isEqualTo(new Decision(NOW, "engineer", heartRate(false))));
  }

  @Test
  void shouldRefuseWhatAFileWouldBeRefusedFor() {
    keep(refusal("R-1", NOW, seen("HF", null, null)));
    var nowhere = new Meant(true, "heart-rate", "nose", null, null, Map.of(), Map.of());
    var wrong = new Meant(true, "heart-rate", null, null, "Cel", Map.of(), Map.of());

    assertThat(desk.map(id("HF"), nowhere, ENGINEER))
        .hasValueSatisfying(why -> assertThat(why).contains("nose"));
    assertThat(desk.map(id("HF"), wrong, ENGINEER))
        .hasValueSatisfying(why -> assertThat(why).contains("Cel"));
    assertThat(desk.map("nobody", heartRate(true), ENGINEER)).isPresent();
    assertThat(desk.unmapped(ENGINEER)).hasSize(1);
  }

  @Test
  void shouldMapACodeForEveryFeedOnlyOnce() {
    var other = new UnmappedCode(new ForeignCode("hl7:OTHER|", "L", "HF"), null, null);
    keep(refusal("R-1", NOW, seen("HF", null, null)), refusal("R-2", NOW, other));
    desk.map(id("HF"), heartRate(true), ENGINEER);
    assertThat(desk.unmapped(ENGINEER)).as("of another feed").isEmpty();

    assertThat(desk.map(ForeignCodes.id(other.code()), heartRate(true), ENGINEER))
        .hasValueSatisfying(why -> assertThat(why).contains("twice"));
    assertThat(desk.map(ForeignCodes.id(other.code()), heartRate(false), ENGINEER)).isEmpty();
  }

  @Test
  void shouldTakeBackWhatWasSaidAndKeepBoth() {
    keep(refusal("R-1", NOW, seen("HF", null, null)));
    assertThat(desk.takeBack(id("HF"), ENGINEER)).as("nothing was said").isFalse();
    desk.map(id("HF"), heartRate(false), ENGINEER);

    assertThat(desk.takeBack(id("HF"), new Sight("second", WardScope.EVERY_WARD))).isTrue();

    assertThat(desk.open(id("HF"), ENGINEER).orElseThrow().decisions())
        .containsExactly(
            new Decision(NOW, "second", null), new Decision(NOW, "engineer", heartRate(false)));
    assertThat(stored.codes().find(HF)).isEmpty();
    assertThat(desk.unmapped(ENGINEER)).hasSize(1);
    assertThatThrownBy(
            () -> IntakeDatabase.execute(database.owner, "DELETE FROM ingest.code_mapping"))
        .hasMessageContaining("append-only");
  }

  @Test
  void shouldReplayTheHeldMessagesOfOneCodeOldestFirst() {
    keep(
        refusal("R-1", NOW, seen("HF", null, null)),
        refusal("R-2", NOW.minusSeconds(9), seen("HF", null, null), seen("OTHER", null, null)),
        refusal("R-3", NOW, seen("OTHER", null, null)));
    assertThat(desk.open(id("HF"), ENGINEER).orElseThrow().held()).isEqualTo(2);

    assertThat(desk.replay(id("HF"), ENGINEER)).isEqualTo(2);
    assertThat(desk.replay(id("HF"), ENGINEER)).as("while they wait").isZero();
    var played = new ArrayList<@Nullable String>();
    while (queue.play(
        (received, bearer) -> {
          played.add(received.replayOf());
          return new Passage(true, List.of());
        })) {}

    assertThat(played).containsExactly("R-2", "R-1");
    assertThat(desk.open(id("HF"), ENGINEER).orElseThrow().held()).isZero();
  }

  @Test
  void shouldShowAnAccountOfSomeWardsOnlyItsOwnCodes() {
    var own = new UnmappedCode(new ForeignCode("http/lab", "urn:lab", "HF"), null, null);
    keep(refusal("R-1", NOW, seen("HF", null, null)), refusal("R-2", NOW, own));
    var lab = new Sight("lab", WardScope.of(Set.of("ward-a")));

    assertThat(desk.unmapped(lab)).extracting(Seen::code).containsExactly(own.code());
    assertThat(desk.open(id("HF"), lab)).isEmpty();
    assertThat(desk.map(id("HF"), heartRate(false), lab)).isPresent();
    assertThat(desk.replay(id("HF"), lab)).isZero();
    assertThat(desk.map(ForeignCodes.id(own.code()), heartRate(true), lab)).isPresent();
    assertThat(desk.map(ForeignCodes.id(own.code()), heartRate(false), lab)).isEmpty();
  }

  private StoredCodeDesk desk(StoredCodes codes) {
    var map = CodeMap.firstOf(List.of(codes.live(), ShippedCodes.MAP));
    return new StoredCodeDesk(database.database, codes, map, ShippedCodes.RULES, clock);
  }

  private static Meant heartRate(boolean everyFeed) {
    return new Meant(
        everyFeed, "heart-rate", null, null, "/min", Map.of(), Map.of("Schlaege", "/min"));
  }

  private static String id(String code) {
    return ForeignCodes.id(new ForeignCode(HF.source(), HF.system(), code));
  }

  private static UnmappedCode seen(String code, @Nullable String text, @Nullable String unit) {
    return new UnmappedCode(new ForeignCode(HF.source(), HF.system(), code), text, unit);
  }

  private static List<Fault> faults() {
    return List.of(new Fault("/OBX/1/3", "unmapped-code", "not mapped"));
  }

  private static Received received(UnmappedCode... codes) {
    return new Received("hl7:GATEWAY|NORTH", Source.HL7, "MLLP", "text/plain", new byte[] {1})
        .withUnmapped(List.of(codes));
  }

  private static Rejection refusal(String id, Instant at, UnmappedCode... codes) {
    return Rejection.of(id, received(codes), at, faults());
  }

  private void keep(Rejection... refusals) {
    var span = new Span(offset, offset + refusals.length);
    offset += refusals.length;
    ledger.keep(new Batch(Map.of(SLOT, span), List.of(), List.of(refusals)));
  }
}
