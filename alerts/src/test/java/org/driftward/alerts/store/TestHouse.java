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
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.driftward.alerts.Accounts;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.WrittenRecord;
import org.driftward.alerts.contract.CareHistory;
import org.driftward.alerts.contract.PatientRecord;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.handover.Isbar;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Snapshot;
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
  final PolicyFile policy;
  final DataSource owner;
  final Database database;
  final JournalTable journal;
  final Quarantine quarantine;
  final Courses courses;
  final Escalation escalation;
  final StoredEpisodeDesk desk;
  final StoredCarePlanDesk plans;
  final Intake intake;
  final DueCourses due;
  final Outbox outbox;
  final Accounts accounts = new Accounts();
  final UnfitOwners unfit;
  final ShiftEnds shiftEnds;
  final StoredShiftDesk shifts;
  final WrittenRecord record = new WrittenRecord();
  final StoredCallDesk calls;
  final StoredEventDesk events;
  final StoredHandoverDesk handovers;
  final StoredWardHandoverDesk wardHandovers;
  final Deliveries deliveries;
  final FailedDeliveries failed;
  final StoredDeliveryDesk told;
  final Bell bell = new Bell();

  TestHouse() {
    this(PolicyFile.shipped(), new Reach(false, Set.of()));
  }

  TestHouse(PolicyFile policy, Reach reach) {
    this.policy = policy;
    var name = newDatabase();
    this.owner = SERVER.getDatabase("postgres", name);
    Flyway.configure()
        .dataSource(owner)
        .locations("db/ground", "db/alerts")
        .schemas("alerts", "ground")
        .placeholders(Map.of("app_role", APPLICATION))
        .load()
        .migrate();
    this.database = new Database(SERVER.getDatabase(APPLICATION, name));
    this.journal = new JournalTable(database);
    this.quarantine = new Quarantine(database, clock, new SimpleMeterRegistry());
    var badRows = new BadRows(database, quarantine);
    var catalogue = Catalogue.shipped();
    var wording = new Wording(catalogue, ZoneOffset.UTC);
    this.escalation =
        new Escalation(
            policy.policy(), new Triggers(policy.policy().triggers(), catalogue, wording));
    var plan = new DeliveryPlan(escalation, reach, journal);
    this.courses = new Courses(database, escalation, journal, plan, bell, clock);
    this.deliveries = new Deliveries(database, courses, journal, escalation, () -> 0.5, badRows);
    this.failed = new FailedDeliveries(database, courses, escalation, badRows);
    this.told = new StoredDeliveryDesk(database, courses, journal, escalation, reach);
    var counter = new ActionCounter(new SimpleMeterRegistry());
    var receivers = new Receivers(database, accounts);
    this.desk = new StoredEpisodeDesk(database, courses, journal, escalation, counter, receivers);
    this.plans =
        new StoredCarePlanDesk(
            courses, escalation, catalogue, new Populations(new TreeSet<>(List.of("pregnant"))));
    this.intake = new Intake(courses, escalation);
    this.due = new DueCourses(database, courses, escalation, badRows);
    this.shiftEnds = new ShiftEnds(database, courses, journal, badRows);
    this.unfit = new UnfitOwners(database, courses, journal, escalation, accounts);
    this.shifts =
        new StoredShiftDesk(database, courses, journal, shiftEnds, escalation, reach, receivers);
    this.calls = new StoredCallDesk(database, courses, escalation, record, receivers);
    this.events = new StoredEventDesk(database, courses, journal);
    var isbar = new Isbar(policy.policy(), catalogue, ZoneOffset.UTC);
    this.handovers =
        new StoredHandoverDesk(
            database, courses, escalation, isbar, record, desk, calls, receivers, told);
    this.wardHandovers = new StoredWardHandoverDesk(database, courses, journal);
    this.outbox = new Outbox(database);
  }

  /** The desk of the measures, which looks back at this history. */
  StoredAuditDesk audit(CareHistory history) {
    return new StoredAuditDesk(
        new AuditRecord(database),
        database,
        journal,
        courses,
        policy,
        Catalogue.shipped(),
        new StoredCallDesk(
            database, courses, escalation, new NoRecord(), new Receivers(database, accounts)),
        new StoredEventDesk(database, courses, journal),
        ZoneOffset.UTC,
        () -> Optional.of(history));
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

  /** Nothing is known of anybody. */
  private static final class NoRecord implements PatientRecord {
    @Override
    public Optional<Page> find(String encounter) {
      return Optional.empty();
    }

    @Override
    public Optional<Snapshot> pictureAt(String encounter, Instant time) {
      return Optional.empty();
    }
  }
}
