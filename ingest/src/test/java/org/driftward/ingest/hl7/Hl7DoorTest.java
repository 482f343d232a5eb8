package org.driftward.ingest.hl7;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Messages to answers and to Kafka, on a real broker. Acknowledgement codes by HL7 v2.5.1 chapter
 * 2.9.2 and table 0008, error codes by table 0357, ADT events by chapter 3.3.
 */
class Hl7DoorTest {

  private static final Bearer BEARER = new Bearer("engineer", WardScope.EVERY_WARD);

  private static Broker broker;
  private static Feed feed;

  @BeforeAll
  static void open() {
    broker = Broker.start();
    feed = new Feed(broker.access(), Map.of());
  }

  @AfterAll
  static void close() {
    feed.close();
    broker.close();
  }

  @Test
  void shouldAcknowledgeWhatKafkaHolds() {
    feed.admit("V-10");

    var answer = feed.take(Text.results("M-10", "V-10", Text.heartRate("88")));

    assertThat(answer)
        .startsWith("MSH|^~\\&|DRIFTWARD|HOUSE|GATEWAY|NORTH|20260105120000+0000||ACK");
    assertThat(answer).contains("\rMSA|AA|M-10");
    assertThat(answer).doesNotContain("ERR");
    assertThat(Feed.assessments(broker, "V-10")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2.3", "2.3.1", "2.4", "2.5", "2.5.1", "2.6", "2.7", "2.7.1", "2.8", "2.8.1", "2.8.2"
      })
  void shouldTakeEveryVersion(String version) {
    var stay = "V-20-" + version;
    feed.admit(stay);
    var message =
        Text.message(
            Text.msh("ORU^R01", "M-20", version, "20260105115500+0000", ""),
            Text.pid("P-" + stay),
            Text.pv1("LINDEN^12^A", stay),
            Text.obr("F-1", "20260105115000+0000"),
            Text.heartRate("88"),
            "ZZZ|a segment of nobody's standard");

    assertThat(feed.take(message)).contains("\rMSA|AA|M-20").contains("|" + version);
    assertThat(Feed.assessments(broker, stay)).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "ORU^R01, P, 2.2, 203, 12",
    "ORU^R01, P, 3.0, 203, 12",
    "ORU^R01, T, 2.5, 202, 11",
    "ORU^R30, P, 2.5, 201, 9",
    "ADT^A05, P, 2.5, 201, 9",
    "ORM^O01, P, 2.5, 200, 9",
  })
  void shouldRejectWhatIsNotForUs(
      String event, String processing, String version, int code, int field) {
    var message =
        Text.message(
            Text.msh(event, "M-30", version, "20260105115500+0000", "")
                .replace("|M-30|P|", "|M-30|" + processing + "|"),
            Text.pid("P-1"));

    var answer = feed.take(message);

    assertThat(answer).contains("\rMSA|AR|M-30").contains(String.valueOf(code));
    assertThat(lastRejection(message))
        .extracting(Fault::pointer)
        .containsExactly("/MSH/1/" + field);
  }

  @Test
  void shouldSayWhatIsWrongAndWhere() {
    feed.admit("V-40");
    var message =
        Text.results(
            "M-40",
            "V-40",
            Text.heartRate("88"),
            Text.obx("NM", "8310-5^^LN", "37", "furlong", "F", "20260105115000+0000"));

    var answer = feed.take(message);

    assertThat(answer)
        .contains("\rMSA|AE|M-40")
        .contains("\rERR||OBX^2^6|103^Table value not found^HL70357|E|||wrong-unit|");
    assertThat(Feed.assessments(broker, "V-40")).isEmpty();
    assertThat(lastRejection(message)).extracting(Fault::rule).containsExactly("wrong-unit");
  }

  @Test
  void shouldSayWhatIsWrongInTheOldWayToOldVersions() {
    var message =
        Text.message(
            Text.msh("ORU^R01", "M-41", "2.3", "20260105115500+0000", ""), Text.pid("P-1"));

    assertThat(feed.take(message))
        .contains("\rMSA|AE|M-41|PID and PV1 are needed")
        .contains("\rERR|^^^101&Required field missing");
  }

  @Test
  void shouldRefuseAResultOfAnotherPatient() {
    feed.admit("V-50");
    feed.admit("V-51");
    var message = Text.results("M-50", "V-50", Text.heartRate("88")).replace("P-V-50", "P-V-51");

    assertThat(feed.take(message)).contains("\rMSA|AE|M-50").contains("PID^1^3|204");
    assertThat(lastRejection(message)).extracting(Fault::rule).containsExactly("other-patient");
  }

  @Test
  void shouldRefuseAResultOfAnUnknownStay() {
    var message = Text.results("M-52", "V-nobody", Text.heartRate("88"));

    assertThat(feed.take(message)).contains("\rMSA|AE|M-52").contains("PV1^1^19|204");
  }

  @Test
  void shouldKeepWhatIsNotMappedAndWarn() {
    feed.admit("V-60");
    var message =
        Text.results(
            "M-60",
            "V-60",
            Text.heartRate("88"),
            Text.obx("NM", "WOBBLE^Wobble^L", "7", "", "F", "20260105115000+0000"));

    var answer = feed.take(message);

    assertThat(answer).contains("\rMSA|AA|M-60").contains("OBX^2^3|103").contains("|W|");
    assertThat(Feed.assessments(broker, "V-60")).hasSize(1);
    assertThat(lastRejection(message)).extracting(Fault::rule).containsExactly("unmapped-code");
    assertThat(kept(message).unmapped())
        .containsExactly(
            new UnmappedCode(new ForeignCode("hl7:GATEWAY|NORTH", "L", "WOBBLE"), "Wobble", null));
  }

  @Test
  void shouldTakeAMendedMessageThroughTheGate() {
    feed.admit("V-61");
    var message = Text.results("M-61", "V-61", Text.heartRate("eighty"));
    assertThat(feed.take(message)).contains("\rMSA|AE|M-61");
    var refused = kept(message);
    var gate = new Hl7Gate(feed.door);
    assertThat(gate.serves(refused.target())).isTrue();

    var again = gate.pass(mended(refused, message), BEARER);
    var mended = gate.pass(mended(refused, message.replace("eighty", "80")), BEARER);

    assertThat(again.kept()).isFalse();
    assertThat(again.faults()).extracting(Fault::rule).containsExactly("wrong-kind");
    assertThat(mended).isEqualTo(new Passage(true, List.of()));
    assertThat(Feed.assessments(broker, "V-61"))
        .singleElement()
        .satisfies(
            one ->
                assertThat(one.findings())
                    .containsExactly(Finding.quantity("heart-rate", "80", "/min")));
    assertThat(Feed.rejections(broker))
        .filteredOn(one -> refused.id().equals(one.replayOf()))
        .hasSize(1);
  }

  @Test
  void shouldLetOnlyWhoSeesEveryWardBringAMessageIn() {
    var refused = kept(refuse("M-62"));

    var passage =
        new Hl7Gate(feed.door)
            .pass(
                mended(refused, Text.results("M-62", "V-1", Text.heartRate("80"))),
                new Bearer("engineer", WardScope.of(Set.of("LINDEN"))));

    assertThat(passage.faults()).extracting(Fault::rule).containsExactly("other-ward");
  }

  /** A part may end inside a number. */
  @Test
  void shouldLetNobodyReplayAPartOfAMessage() {
    var part = "MSH|^~\\&|TORN|NORTH";
    feed.door.keepBroken(part.getBytes(StandardCharsets.UTF_8), "the message broke off");

    assertThat(new Hl7Gate(feed.door).serves(kept(part).target())).isFalse();
  }

  private static String refuse(String id) {
    var message = Text.results(id, "V-nobody", Text.heartRate("80"));
    assertThat(feed.take(message)).contains("\rMSA|AE|" + id);
    return message;
  }

  private static Received mended(Rejection refused, String message) {
    return new Received(
            refused.origin(),
            refused.source(),
            refused.target(),
            refused.contentType(),
            message.getBytes(StandardCharsets.UTF_8))
        .asReplayOf(refused.id());
  }

  private static Rejection kept(String message) {
    return Feed.rejections(broker).stream()
        .filter(one -> new String(one.bytes(), StandardCharsets.UTF_8).equals(message))
        .filter(one -> one.replayOf() == null)
        .reduce((first, second) -> second)
        .orElseThrow();
  }

  @Test
  void shouldReviseACorrectedAndRetractADeletedResult() {
    feed.admit("V-70");
    feed.take(Text.results("M-70", "V-70", Text.heartRate("88")));
    feed.take(Text.results("M-71", "V-70", Text.heartRate("98").replace("|F|", "|C|")));
    feed.take(Text.results("M-72", "V-70", Text.heartRate("98").replace("|F|", "|D|")));

    var kept = Feed.assessments(broker, "V-70");

    assertThat(kept).extracting(Assessment::id).hasSize(3).containsOnly(kept.get(0).id());
    assertThat(kept)
        .extracting(one -> one.status().word())
        .containsExactly("final", "amended", "retracted");
    assertThat(kept).extracting(Assessment::revision).isSorted();
  }

  /** Table 0211: the names of character sets in MSH-18. */
  @ParameterizedTest
  @CsvSource({"UNICODE UTF-8, UTF-8", "8859/1, ISO-8859-1", "8859/15, ISO-8859-15", "'', UTF-8"})
  void shouldReadNamesInTheirCharacterSet(String name, String charset) {
    var stay = "V-80-" + charset + name.length();
    var message =
        Text.message(
                Text.msh("ADT^A01", "M-80", "2.5", "20260105115500+0000", name),
                Text.evn("20260105080500+0000"),
                Text.pid("P-80").replace("Harrowgate^Sunniva", "Østergård^Zoë"),
                Text.pv1("LINDEN", stay, "20260105080000+0000", ""))
            .getBytes(Charset.forName(charset));

    var answer = new String(feed.door.take(message), StandardCharsets.ISO_8859_1);

    assertThat(answer).contains("\rMSA|AA|M-80");
    assertThat(stay(stay).patient().name()).isEqualTo("Østergård, Zoë");
  }

  @Test
  void shouldNotReadANameInACharacterSetThatItIsNotIn() {
    var message =
        Text.message(
                Text.msh("ADT^A01", "M-81", "2.5", "20260105115500+0000", "UNICODE UTF-8"),
                Text.evn("20260105080500+0000"),
                Text.pid("P-81").replace("Sunniva", "Zoë"),
                Text.pv1("LINDEN", "V-81", "20260105080000+0000", ""))
            .getBytes(StandardCharsets.ISO_8859_1);

    var answer = new String(feed.door.take(message), StandardCharsets.ISO_8859_1);

    assertThat(answer).contains("\rMSA|AR|M-81").contains("MSH^1^18");
    assertThat(feed.directory.find("V-81")).isEmpty();
    assertThat(Feed.rejections(broker))
        .anySatisfy(one -> assertThat(one.bytes()).isEqualTo(message));
  }

  @Test
  void shouldAdmitMoveUpdateAndDischarge() {
    feed.admit("V-90");
    assertThat(stay("V-90").ward()).isEqualTo("LINDEN");
    assertThat(stay("V-90").bed()).isEqualTo("12-A");

    event("A02", "V-90", "ALDER^3^B", "20260105090000+0000");
    assertThat(stay("V-90").ward()).isEqualTo("ALDER");
    assertThat(stay("V-90").stays()).hasSize(2);

    feed.take(
        adt("A08", "V-90", "ALDER^3^B", "20260105093000+0000").replace("Sunniva", "Sunniva^Bree"));
    assertThat(stay("V-90").patient().name()).isEqualTo("Harrowgate, Sunniva Bree");

    event("A03", "V-90", "ALDER^3^B", "20260105100000+0000");
    assertThat(stay("V-90").discharged()).isEqualTo(Instant.parse("2026-01-05T10:00:00Z"));

    event("A13", "V-90", "ALDER^3^B", "20260105101000+0000");
    assertThat(stay("V-90").present()).isTrue();
  }

  @Test
  void shouldNotUndoWhatHappenedSinceWhenAMessageIsRepeated() {
    feed.admit("V-91");
    event("A02", "V-91", "ALDER^3^B", "20260105090000+0000");
    event("A02", "V-91", "BIRCH^4^C", "20260105093000+0000");

    event("A02", "V-91", "ALDER^3^B", "20260105090000+0000");
    assertThat(stay("V-91").ward()).isEqualTo("BIRCH");
    assertThat(stay("V-91").stays()).hasSize(3);

    event("A03", "V-91", "BIRCH^4^C", "20260105100000+0000");
    feed.admit("V-91");
    assertThat(stay("V-91").present()).isFalse();
  }

  @Test
  void shouldTakeATransferBack() {
    feed.admit("V-92");
    event("A02", "V-92", "ALDER^3^B", "20260105090000+0000");

    event("A12", "V-92", "LINDEN^12^A", "20260105090500+0000");
    event("A12", "V-92", "LINDEN^12^A", "20260105090500+0000");

    assertThat(stay("V-92").stays()).hasSize(1);
    assertThat(stay("V-92").ward()).isEqualTo("LINDEN");
  }

  @Test
  void shouldCallAnAdmissionOff() {
    feed.admit("V-93");

    event("A11", "V-93", "LINDEN^12^A", "20260105081000+0000");

    assertThat(stay("V-93").present()).isFalse();
    assertThat(feed.take(Text.results("M-93", "V-93", Text.heartRate("88"))))
        .contains("\rMSA|AE|M-93");
  }

  @Test
  void shouldGiveTheStaysOfOneNumberToAnother() {
    feed.admit("V-94");

    var merge =
        Text.message(
            Text.msh("ADT^A40^ADT_A39", "M-94"),
            Text.evn("20260105110000+0000"),
            Text.pid("P-survivor"),
            "MRG|P-V-94^^^HOUSE^MR");
    assertThat(feed.take(merge)).contains("\rMSA|AA|M-94");
    assertThat(feed.take(merge)).contains("\rMSA|AA|M-94");

    assertThat(stay("V-94").patient().id()).isEqualTo("P-survivor");
    assertThat(stay("V-94").version()).isEqualTo(2);
  }

  @Test
  void shouldMergeTwoStays() {
    feed.admit("V-95");
    feed.admit("V-96");

    var answer =
        feed.take(
            Text.message(
                Text.msh("ADT^A40^ADT_A39", "M-95"),
                Text.evn("20260105110000+0000"),
                Text.pid("P-V-96"),
                "MRG|P-V-95^^^HOUSE^MR||||V-95",
                Text.pv1("LINDEN^12^A", "V-96")));

    assertThat(answer).contains("\rMSA|AA|M-95");
    assertThat(stay("V-95").mergedInto()).isEqualTo("V-96");
    assertThat(stay("V-96").present()).isTrue();
  }

  @Test
  void shouldNotMergeIntoAnotherPatientsStay() {
    feed.admit("V-97");
    feed.admit("V-98");

    var answer =
        feed.take(
            Text.message(
                Text.msh("ADT^A40^ADT_A39", "M-97"),
                Text.evn("20260105110000+0000"),
                Text.pid("P-stranger"),
                "MRG|P-V-97^^^HOUSE^MR||||V-97",
                Text.pv1("LINDEN^12^A", "V-98")));

    assertThat(answer).contains("\rMSA|AE|M-97");
    assertThat(stay("V-97").present()).isTrue();
    assertThat(stay("V-97").patient().id()).isEqualTo("P-V-97");
  }

  @Test
  void shouldRefuseAMoveOfAnotherPatient() {
    feed.admit("V-99");

    assertThat(
            feed.take(
                adt("A02", "V-99", "ALDER", "20260105090000+0000").replace("P-V-99", "P-other")))
        .contains("\rMSA|AE|");
    assertThat(stay("V-99").ward()).isEqualTo("LINDEN");
  }

  @Test
  void shouldAnswerWhatCannotBeRead() {
    var answer = feed.take("MSH|^~\\&|GATEWAY|NORTH||||||M-100");

    assertThat(answer).contains("\rMSA|AR|M-100");
    assertThat(feed.take("hello")).contains("\rMSA|AR");
  }

  private static void event(String event, String stay, String place, String at) {
    assertThat(feed.take(adt(event, stay, place, at))).contains("\rMSA|AA|");
  }

  private static String adt(String event, String stay, String place, String at) {
    return Text.message(
        Text.msh("ADT^" + event, event + stay),
        Text.evn(at),
        Text.pid("P-" + stay),
        Text.pv1(place, stay));
  }

  private static Encounter stay(String id) {
    return feed.directory.find(id).orElseThrow();
  }

  /** The faults with which exactly these bytes were kept last. */
  private static List<Fault> lastRejection(String message) {
    return Feed.rejections(broker).stream()
        .filter(one -> new String(one.bytes(), StandardCharsets.UTF_8).equals(message))
        .reduce((first, second) -> second)
        .orElseThrow()
        .faults();
  }
}
