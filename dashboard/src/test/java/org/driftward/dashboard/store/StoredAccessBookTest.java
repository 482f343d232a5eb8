package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import javax.sql.DataSource;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.core.AccessBook.Look;
import org.driftward.dashboard.core.AccessBook.Question;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.WardScope;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class StoredAccessBookTest {

  private static final Instant START = Instant.parse("2026-01-05T12:00:00Z");

  private final AtomicReference<Instant> now = new AtomicReference<>(START);
  private DataSource database;
  private StoredAccessBook book;

  @BeforeEach
  void open() {
    database = DashboardDatabase.emptied();
    DashboardDatabase.run("UPDATE dashboard.access_head SET sequence = 0, hash = repeat('0', 64)");
    book =
        new StoredAccessBook(
            new Database(database),
            new Clock() {
              @Override
              public Instant instant() {
                return now.get();
              }

              @Override
              public ZoneId getZone() {
                return ZoneOffset.UTC;
              }

              @Override
              public Clock withZone(ZoneId zone) {
                return this;
              }
            });
  }

  @Test
  void shouldKeepOneLookForAQuarterOfAnHour() {
    book.looked("n.one", "V-1", "heron", "patient");
    now.set(START.plus(Duration.ofMinutes(15)).minusMillis(1));
    book.looked("n.one", "V-1", "heron", "patient");
    book.looked("n.two", "V-1", "heron", "patient");
    now.set(START.plus(Duration.ofMinutes(15)));
    book.looked("n.one", "V-1", "heron", "patient");

    assertThat(all()).extracting(Look::account).containsExactly("n.one", "n.two", "n.one");
    assertThat(all()).extracting(Look::sequence).containsExactly(3L, 2L, 1L);
  }

  @Test
  void shouldTellOnlyOfTheWardsOfTheReader() {
    book.looked("n.one", "V-1", "heron", "patient");
    book.looked("n.one", "V-2", "kestrel", "history");

    assertThat(looks(WardScope.of(Set.of("kestrel"))))
        .extracting(Look::encounter)
        .containsExactly("V-2");
  }

  @Test
  void shouldNotLetTheApplicationChangeALook() {
    book.looked("n.one", "V-1", "heron", "patient");

    for (var sql :
        List.of("UPDATE dashboard.access SET account = 'x'", "DELETE FROM dashboard.access")) {
      assertThatThrownBy(
              () -> {
                try (var connection = database.getConnection();
                    var statement = connection.createStatement()) {
                  statement.execute(sql);
                }
              })
          .isInstanceOfSatisfying(
              SQLException.class, refusal -> assertThat(refusal.getSQLState()).isEqualTo("42501"));
    }
  }

  @Test
  void shouldFindALookThatTheOwnerChangedOrRemoved() {
    for (int i = 1; i <= 4; i++) {
      book.looked("n.one", "V-" + i, "heron", "patient");
    }
    assertThat(book.check().sound()).isTrue();

    DashboardDatabase.run("UPDATE dashboard.access SET account = 'n.two' WHERE sequence = 2");
    assertThat(book.check().fault()).startsWith("entry 2 was altered");

    DashboardDatabase.run("DELETE FROM dashboard.access WHERE sequence = 2");
    assertThat(book.check().fault()).isEqualTo("entry 2 is missing");
  }

  private List<Look> all() {
    return looks(WardScope.EVERY_WARD);
  }

  private List<Look> looks(WardScope scope) {
    return book.looks(new Question(scope, null, null, START, START.plus(Duration.ofDays(1)), 100));
  }
}
