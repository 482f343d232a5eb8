package org.driftward.alerts.store;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Populations;
import org.flywaydb.core.Flyway;

/**
 * Everything of the store on a real PostgreSQL, connected as a role that may only what the
 * application may. One server for all tests, one database for each house.
 */
final class TestHouse {

  static final Instant START = Instant.parse("2026-01-05T03:00:00Z");
  private static final String APPLICATION = "application";
  private static final EmbeddedPostgres SERVER = start();
  private static int houses;

  final TestClock clock = new TestClock(START);
  final PolicyFile policy = PolicyFile.shipped();
  final DataSource owner;
  final Database database;
  final JournalTable journal;
  final Courses courses;
  final Escalation escalation;
  final StoredEpisodeDesk desk;
  final StoredCarePlanDesk plans;
  final Intake intake;
  final DueCourses due;
  final Outbox outbox;
  final ShiftEnds shiftEnds;
  final StoredShiftDesk shifts;
  final Bell bell = new Bell();

  TestHouse() {
    var name = newDatabase();
    this.owner = SERVER.getDatabase("postgres", name);
    Flyway.configure()
        .dataSource(owner)
        .locations("db/alerts")
        .schemas("alerts")
        .placeholders(Map.of("app_role", APPLICATION))
        .load()
        .migrate();
    this.database = new Database(SERVER.getDatabase(APPLICATION, name));
    this.journal = new JournalTable(database);
    var catalogue = Catalogue.shipped();
    var wording = new Wording(catalogue, ZoneOffset.UTC);
    this.escalation =
        new Escalation(
            policy.policy(), new Triggers(policy.policy().triggers(), catalogue, wording));
    this.courses = new Courses(database, escalation, journal, bell, clock);
    var counter = new ActionCounter(new SimpleMeterRegistry());
    this.desk = new StoredEpisodeDesk(database, courses, journal, escalation, counter);
    this.plans =
        new StoredCarePlanDesk(
            courses, escalation, catalogue, new Populations(new TreeSet<>(List.of("pregnant"))));
    this.intake = new Intake(courses, escalation);
    this.due = new DueCourses(courses, escalation);
    this.shiftEnds = new ShiftEnds(database, courses, journal);
    this.shifts = new StoredShiftDesk(database, courses, journal, shiftEnds, escalation);
    this.outbox = new Outbox(database);
  }

  private static EmbeddedPostgres start() {
    try {
      var server = EmbeddedPostgres.start();
      execute(server.getPostgresDatabase(), "CREATE ROLE " + APPLICATION + " LOGIN");
      return server;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static synchronized String newDatabase() {
    var name = "house" + ++houses;
    execute(SERVER.getPostgresDatabase(), "CREATE DATABASE " + name);
    return name;
  }

  static void execute(DataSource source, String sql) {
    try (var connection = source.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IllegalStateException(sql, e);
    }
  }
}
