package org.driftward.ingest.files;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.driftward.ingest.kafka.House.encounter;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.FileImport.RejectedRow;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.kafka.House;
import org.driftward.ingest.store.Imports.Added;
import org.driftward.ingest.store.IntakeDatabase;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files on their way through a real database to a real broker. */
class ImportFlowTest {

  private static final String HEADER = "encounter,patient,takenAt,heart-rate [/min]\r\n";
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private static Broker broker;
  private static int count;
  private final IntakeDatabase database = new IntakeDatabase();
  private String stay;
  private FileHouse house;

  @BeforeAll
  static void startBroker() {
    broker = Broker.start();
  }

  @AfterAll
  static void stopBroker() {
    broker.close();
  }

  @BeforeEach
  void open() throws Exception {
    stay = "V-" + ++count;
    house = new FileHouse(broker.access(), database, PATIENCE);
    House.outcome(house.house.intake.put("test", encounter(stay, "ward-a", "1")));
  }

  @AfterEach
  void close() {
    house.close();
  }

  @Test
  void shouldBringInEveryRowWhereverThePartsEnd() {
    var progress = house.bringIn("parts", HEADER + rows(0, 25), 37, WardScope.EVERY_WARD);

    assertThat(progress.state()).isEqualTo(FileImport.State.FINISHED);
    assertThat(progress.accepted()).isEqualTo(25);
    assertThat(progress.rejected()).isZero();
    assertThat(progress.done()).isEqualTo(progress.received());
    assertThat(kept())
        .hasSize(25)
        .allSatisfy(
            each -> {
              assertThat(each.source()).isEqualTo(Source.FILE);
              assertThat(each.by()).isEqualTo(FileHouse.ACCOUNT);
            })
        .extracting(Assessment::id)
        .doesNotHaveDuplicates();
  }

  @Test
  void shouldReportABrokenRowByItsLineAndGoOn() {
    var file =
        HEADER
            + row(1)
            + (stay + ",P-" + stay + ",yesterday,80\r\n")
            + row(2)
            + (stay + ",\"P-" + stay + ",2026-01-05T10:00:00Z,80\r\n")
            + (stay + ",P-" + stay + ",2026-01-05T10:00:00Z,999\r\n")
            + row(3);

    var progress = house.bringIn("broken", file, 1 << 20, WardScope.EVERY_WARD);

    assertThat(progress.accepted()).isEqualTo(3);
    assertThat(progress.rejected()).isEqualTo(3);
    var rejected = house.rejected(progress.id());
    assertThat(rejected).extracting(RejectedRow::line).containsExactly(3L, 5L, 6L);
    assertThat(rejected)
        .extracting(each -> each.faults().get(0).rule())
        .containsExactly("malformed-time", "malformed-row", "out-of-range");
    assertThat(rejected.get(2).faults().get(0).pointer()).isEqualTo("/heart-rate [~1min]");
  }

  @Test
  void shouldGoOnBehindACrashWithoutDoublingAnything() {
    var file = HEADER + rows(0, 1200) + (stay + ",P-" + stay + ",yesterday,80\r\n");
    var begun = house.begin("crash", "text/csv", null, WardScope.EVERY_WARD);
    house.imports.add(begun.id(), 0, file.getBytes(UTF_8), true);

    // Every batch is brought in, and the process dies before the database hears of it; then again.
    for (int life = 0; life < 3; life++) {
      assertThatIllegalStateException()
          .isThrownBy(
              () ->
                  house.queue.work(
                      (job, arrived) -> {
                        house.step.work(job, arrived);
                        throw new IllegalStateException("the process dies here");
                      }));
      house.close();
      house = new FileHouse(broker.access(), database, PATIENCE);
      house.queue.work(house.step);
    }

    var progress = house.now(begun.id());
    assertThat(progress.state()).isEqualTo(FileImport.State.FINISHED);
    assertThat(progress.accepted()).isEqualTo(1200);
    assertThat(progress.rejected()).isEqualTo(1);
    // Readers keep one of equal ids and revisions; so what counts is how many different ones.
    assertThat(kept().size()).isGreaterThan(1200);
    assertThat(ids()).hasSize(1200);
    assertThat(refusals("file/" + FileHouse.ACCOUNT, "import-" + begun.id())).hasSize(1);
  }

  @Test
  void shouldKnowTheSameRowsOfAnotherFile() {
    house.bringIn("first", HEADER + rows(0, 10), 1 << 20, WardScope.EVERY_WARD);
    house.bringIn("second", HEADER + rows(5, 20), 1 << 20, WardScope.EVERY_WARD);

    assertThat(ids()).hasSize(20);
  }

  @Test
  void shouldGoOnWithTheSameFileWhereItWasBrokenOff() {
    var file = (HEADER + rows(0, 3)).getBytes(UTF_8);
    var begun = house.begin("again", "text/csv", null, WardScope.EVERY_WARD);
    house.imports.add(begun.id(), 0, Arrays.copyOf(file, 60), false);

    var again = house.begin("again", "text/csv", null, WardScope.EVERY_WARD);
    assertThat(again.id()).isEqualTo(begun.id());
    assertThat(again.received()).isEqualTo(60);

    var tooFar = house.imports.add(begun.id(), 70, new byte[] {1}, false);
    assertThat(tooFar).isInstanceOf(Added.Elsewhere.class);
    var repeated = house.imports.add(begun.id(), 0, Arrays.copyOf(file, 60), false);
    assertThat(repeated).isInstanceOf(Added.Kept.class);
    var rest = Arrays.copyOfRange(file, 60, file.length);
    house.imports.add(begun.id(), 60, rest, true);
    house.work();

    assertThat(house.now(begun.id()).accepted()).isEqualTo(3);
  }

  @Test
  void shouldWaitForKafkaAndGoOnByItself() {
    try (var impatient = new FileHouse(broker.access(), database, Duration.ofSeconds(2))) {
      var begun = house.begin("outage", "text/csv", null, WardScope.EVERY_WARD);
      house.imports.add(begun.id(), 0, (HEADER + rows(0, 900)).getBytes(UTF_8), true);
      impatient.queue.work(impatient.step);
      broker.stop();
      try {
        assertThatExceptionOfType(UnavailableException.class)
            .isThrownBy(() -> impatient.queue.work(impatient.step));
        assertThat(house.now(begun.id()).read()).isEqualTo(499);
      } finally {
        broker.startAgain();
      }

      house.work();

      assertThat(house.now(begun.id()).state()).isEqualTo(FileImport.State.FINISHED);
      assertThat(ids()).hasSize(900);
    }
  }

  @Test
  void shouldReadNothingUnderAHeaderThatItDoesNotUnderstand() {
    var progress =
        house.bringIn(
            "foreign", "Case,Pulse\r\n" + stay + ",80\r\n", 1 << 20, WardScope.EVERY_WARD);

    assertThat(progress.state()).isEqualTo(FileImport.State.REFUSED);
    assertThat(progress.faults()).hasSize(2);
    assertThat(kept()).isEmpty();
  }

  @Test
  void shouldReadAForeignHeaderByItsMapping() {
    house.mappings.put(
        "ward-export",
        """
        delimiter: ";"
        zone: UTC
        columns: {Case: encounter, Person: patient, At: takenAt, Pulse: "heart-rate [/min]"}
        ignore: [Room]
        """,
        "engineer");
    var begun = house.begin("mapped", "text/csv", "ward-export", WardScope.EVERY_WARD);
    var file = "Case;Room;Person;At;Pulse\n" + stay + ";7;P-" + stay + ";2026-01-05 10:00;81\n";
    house.imports.add(begun.id(), 0, file.getBytes(UTF_8), true);
    house.work();

    assertThat(kept())
        .singleElement()
        .satisfies(
            each -> {
              assertThat(each.takenAt()).isEqualTo("2026-01-05T10:00:00Z");
              assertThat(each.findings()).containsExactly(House.heartRate(81));
            });
  }

  @Test
  void shouldTakeOneJsonObjectFromEachLine() {
    // As ndjson.org describes it: JSON texts, each followed by a line feed; CR LF is taken, too.
    var begun = house.begin("ndjson", "application/x-ndjson", null, WardScope.EVERY_WARD);
    var file = json(80) + "\n" + json(81) + "\r\n\n[]\n" + json(82);
    house.imports.add(begun.id(), 0, file.getBytes(UTF_8), true);
    house.work();

    assertThat(house.now(begun.id()).accepted()).isEqualTo(3);
    assertThat(house.rejected(begun.id())).extracting(RejectedRow::line).containsExactly(4L);
    assertThat(kept()).extracting(Assessment::source).containsOnly(Source.FILE);
  }

  @Test
  void shouldNotBringInARowAboutAWardThatTheSenderDoesNotSee() {
    var progress = house.bringIn("ward", HEADER + row(1), 1 << 20, WardScope.of(Set.of("ward-b")));

    assertThat(progress.rejected()).isEqualTo(1);
    assertThat(house.rejected(progress.id()).get(0).faults())
        .singleElement()
        .satisfies(fault -> assertThat(fault.rule()).isEqualTo("other-ward"));
    assertThat(kept()).isEmpty();
  }

  @Test
  void shouldBringARefusedRowInOnceItIsMended() {
    var file = HEADER + (stay + ",P-" + stay + ",yesterday,80\r\n");
    var progress = house.bringIn("mend", file, 1 << 20, WardScope.EVERY_WARD);
    var refused =
        refusals("file/" + FileHouse.ACCOUNT, "import-" + progress.id()).iterator().next();
    var mended = new String(refused.bytes(), UTF_8).replace("yesterday", "2026-01-05T09:00:00Z");

    var passage =
        house.gate.pass(
            new Received(
                refused.origin(),
                refused.source(),
                refused.target(),
                refused.contentType(),
                mended.getBytes(UTF_8)),
            new Bearer("engineer", WardScope.EVERY_WARD));

    assertThat(house.gate.serves(refused.target())).isTrue();
    assertThat(passage.kept()).isTrue();
    assertThat(passage.faults()).isEmpty();
    assertThat(kept()).singleElement().extracting(Assessment::by).isEqualTo("engineer");
  }

  private String rows(int from, int to) {
    return IntStream.range(from, to).mapToObj(this::row).collect(Collectors.joining());
  }

  private String row(int number) {
    var takenAt = House.NOW.minusSeconds(3600).plusSeconds(number);
    return "%s,P-%s,%s,%d\r\n".formatted(stay, stay, takenAt, 60 + number % 60);
  }

  private String json(int heartRate) {
    return """
        {"encounter":"%s","patient":"P-%s","takenAt":"2026-01-05T11:00:00Z",\
        "findings":[{"code":"heart-rate","value":%d,"unit":"/min"}]}"""
        .formatted(stay, stay, heartRate);
  }

  private List<Assessment> kept() {
    return broker.read(Topic.ASSESSMENTS).stream()
        .filter(each -> each.key().equals(stay))
        .map(each -> JsonFormat.of(Assessment.class).read(each.value()))
        .toList();
  }

  private Set<String> ids() {
    return kept().stream().map(Assessment::id).collect(Collectors.toSet());
  }

  private Set<Rejection> refusals(String origin, String prefix) {
    return broker.read(Topic.REJECTED).stream()
        .filter(each -> each.key().equals(origin))
        .map(each -> JsonFormat.of(Rejection.class).read(each.value()))
        .filter(each -> each.id().startsWith(prefix))
        .collect(Collectors.toSet());
  }
}
