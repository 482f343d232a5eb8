package org.driftward.deploy.bench;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.LongAdder;
import java.util.regex.Pattern;
import org.apache.kafka.common.TopicPartition;
import org.driftward.deploy.embedded.EmbeddedDatabase;
import org.driftward.deploy.embedded.Secrets;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.JsonFormat;

/**
 * What a hospital might do instead: the same records read from their topic into a table of sets, a
 * view that works out NEWS2 (RCP 2017, oxygen scale 1, complete sets only) of each newest set, and
 * a page for each ward that asks the view every five seconds. No history, drift, trend, bounds or
 * explanation.
 */
final class PolledView {

  static final String NAME = "table, SQL view, polled";

  private static final int LOADERS = 2;
  private static final Duration WARM_UP = Duration.ofSeconds(10);
  private static final Duration LOADING = Duration.ofSeconds(15);
  private static final Duration A_WHILE = Duration.ofMillis(200);
  private static final Duration POLL_EVERY = Duration.ofSeconds(5);

  private static final String SCHEMA =
      """
      CREATE SCHEMA bench;
      CREATE TABLE bench.patient (encounter text PRIMARY KEY, ward text NOT NULL);
      CREATE INDEX ON bench.patient (ward);
      CREATE TABLE bench.vital_set (
        encounter text NOT NULL, taken_at timestamptz NOT NULL, respiration int, saturation int,
        oxygen boolean, systolic int, diastolic int, pulse int, alert boolean, temperature numeric,
        PRIMARY KEY (encounter, taken_at));
      CREATE VIEW bench.board AS
      SELECT p.ward, p.encounter, s.taken_at,
        CASE WHEN respiration <= 8 THEN 3 WHEN respiration <= 11 THEN 1 WHEN respiration <= 20 THEN 0
             WHEN respiration <= 24 THEN 2 ELSE 3 END
        + CASE WHEN saturation <= 91 THEN 3 WHEN saturation <= 93 THEN 2
               WHEN saturation <= 95 THEN 1 ELSE 0 END
        + CASE WHEN oxygen THEN 2 ELSE 0 END
        + CASE WHEN systolic <= 90 THEN 3 WHEN systolic <= 100 THEN 2 WHEN systolic <= 110 THEN 1
               WHEN systolic <= 219 THEN 0 ELSE 3 END
        + CASE WHEN pulse <= 40 THEN 3 WHEN pulse <= 50 THEN 1 WHEN pulse <= 90 THEN 0
               WHEN pulse <= 110 THEN 1 WHEN pulse <= 130 THEN 2 ELSE 3 END
        + CASE WHEN alert THEN 0 ELSE 3 END
        + CASE WHEN temperature <= 35.0 THEN 3 WHEN temperature <= 36.0 THEN 1
               WHEN temperature <= 38.0 THEN 0 WHEN temperature <= 39.0 THEN 1 ELSE 2 END AS news2
      FROM bench.patient p CROSS JOIN LATERAL (
        SELECT * FROM bench.vital_set v WHERE v.encounter = p.encounter
        ORDER BY taken_at DESC LIMIT 1) s;
      """;

  private static final String INSERT =
      "INSERT INTO bench.vital_set VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  /** By the code of the finding. */
  private static final Map<String, Integer> COLUMNS =
      Map.of(
          "respiratory-rate", 3,
          "oxygen-saturation", 4,
          "inspired-oxygen", 5,
          "systolic-pressure", 6,
          "diastolic-pressure", 7,
          "heart-rate", 8,
          "consciousness", 9,
          "temperature", 10);

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);

  private final Payload payload;
  private final BrokerProcess broker;
  private final List<TopicPartition> partitions;
  private final Map<String, String> database;

  private PolledView(
      Payload payload,
      BrokerProcess broker,
      List<TopicPartition> partitions,
      Map<String, String> database) {
    this.payload = payload;
    this.broker = broker;
    this.partitions = partitions;
    this.database = database;
  }

  /**
   * @param topic that holds the assessments
   */
  static Measured measure(Payload payload, BrokerProcess broker, String topic, Path folder)
      throws Exception {
    var partitions = broker.partitions(topic);
    Files.createDirectories(folder.resolve("db"));
    try (var database = EmbeddedDatabase.start(folder.resolve("db"), 0, new Secrets(folder))) {
      return new PolledView(payload, broker, partitions, database.properties()).run();
    }
  }

  private Measured run() throws Exception {
    try (var connection = connect()) {
      try (var statement = connection.createStatement()) {
        statement.execute(SCHEMA);
      }
      admit(connection);
      var over = new AtomicBoolean();
      var loaded = new LongAdder();
      var threads = Executors.newFixedThreadPool(LOADERS + 1);
      var loaders = new ArrayList<Future<Integer>>();
      for (int i = 0; i < LOADERS; i++) {
        int loader = i;
        loaders.add(threads.submit(() -> load(loader, loaded, over)));
      }
      var polls = threads.submit(() -> poll(over));
      Thread.sleep(WARM_UP.toMillis());
      long before = loaded.sum();
      long wal = wal(connection, 0);
      var meter = new Meter(PolledView::serverCpu);
      Thread.sleep(LOADING.toMillis());
      long sets = loaded.sum() - before;
      var measured = meter.read(NAME, payload.encounters(), sets, wal(connection, wal));
      over.set(true);
      for (var loader : loaders) {
        if (loader.get() == 0) {
          throw new IllegalStateException("a loader had nothing to do");
        }
      }
      if (polls.get() == 0) {
        throw new IllegalStateException("the page saw nothing");
      }
      threads.shutdown();
      return measured;
    }
  }

  private void admit(Connection connection) throws SQLException {
    connection.setAutoCommit(false);
    try (var insert = connection.prepareStatement("INSERT INTO bench.patient VALUES (?, ?)")) {
      for (int i = 0; i < payload.encounters(); i++) {
        insert.setString(1, "V-" + i);
        insert.setString(2, Payload.ward(i));
        insert.addBatch();
      }
      insert.executeBatch();
    }
    connection.commit();
    connection.setAutoCommit(true);
  }

  /** One transaction for each set, as an interface engine that acknowledges each message does. */
  private int load(int loader, LongAdder loaded, AtomicBoolean over) throws SQLException {
    int mine = 0;
    var share = partitions.stream().filter(one -> one.partition() % LOADERS == loader).toList();
    try (var records = broker.reader(share);
        var connection = connect();
        var insert = connection.prepareStatement(INSERT)) {
      while (!over.get()) {
        for (var received : records.poll(A_WHILE)) {
          fill(insert, ASSESSMENT.read(received.value()));
          mine += insert.executeUpdate();
          loaded.increment();
          if (over.get()) {
            break;
          }
        }
      }
    }
    return mine;
  }

  private static void fill(PreparedStatement insert, Assessment assessment) throws SQLException {
    insert.setString(1, assessment.encounter());
    insert.setTimestamp(2, Timestamp.from(assessment.takenAt()));
    for (var finding : assessment.findings()) {
      int column = COLUMNS.get(finding.code());
      switch (finding.value().plain()) {
        case "air" -> insert.setBoolean(column, false);
        case "alert" -> insert.setBoolean(column, true);
        default -> insert.setBigDecimal(column, new BigDecimal(finding.value().plain()));
      }
    }
  }

  /** Every ward's page in turn, each once in five seconds, or as often as it goes. */
  private int poll(AtomicBoolean over) throws SQLException, InterruptedException {
    int wards = (payload.encounters() + Payload.BEDS - 1) / Payload.BEDS;
    long pause = POLL_EVERY.toNanos() / wards;
    int seen = 0;
    long due = System.nanoTime();
    try (var connection = connect();
        var select =
            connection.prepareStatement(
                "SELECT * FROM bench.board WHERE ward = ? ORDER BY news2 DESC")) {
      for (int ward = 0; !over.get(); ward = (ward + 1) % wards) {
        select.setString(1, "ward-" + ward);
        try (var rows = select.executeQuery()) {
          while (rows.next()) {
            seen += rows.getInt("news2") >= 0 ? 1 : 0;
          }
        }
        due += pause;
        long early = (due - System.nanoTime()) / 1_000_000;
        if (early > 0) {
          Thread.sleep(early);
        }
      }
    }
    return seen;
  }

  private Connection connect() throws SQLException {
    return DriverManager.getConnection(
        database.get("quarkus.datasource.jdbc.url"),
        database.get("quarkus.flyway.username"),
        database.get("quarkus.flyway.password"));
  }

  private static long wal(Connection connection, long since) throws SQLException {
    try (var statement = connection.createStatement();
        var row =
            statement.executeQuery("SELECT pg_wal_lsn_diff(pg_current_wal_lsn(), '0/0')::bigint")) {
      row.next();
      return row.getLong(1) - since;
    }
  }

  /**
   * CPU of every child of this process: the server and those that it has started, also those that
   * have ended, whose time Linux adds to their parent's.
   */
  private static double serverCpu() {
    return ProcessHandle.current().descendants().mapToDouble(PolledView::cpu).sum();
  }

  /** Fields 14 to 17 of proc(5)'s stat: own and reaped children's, in ticks of 10 ms. */
  private static double cpu(ProcessHandle process) {
    try {
      var stat = Files.readString(Path.of("/proc", String.valueOf(process.pid()), "stat"));
      // The second field, the name, may hold blanks and is in parentheses.
      return Pattern.compile(" ")
              .splitAsStream(stat.substring(stat.lastIndexOf(')') + 2))
              .skip(11)
              .limit(4)
              .mapToLong(Long::parseLong)
              .sum()
          / 100.0;
    } catch (IOException e) {
      // It ended between being listed and being read.
      return 0;
    }
  }
}
