package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.alerts.contract.JournalChain;
import org.driftward.alerts.store.Intake.News;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the application may not do, and what is found when the database's owner does it. */
class JournalTamperingTest {

  private final TestHouse house = new TestHouse();

  @BeforeEach
  void write() {
    for (int i = 1; i <= 6; i++) {
      house.intake.take(
          List.of(new News.Picture(Pictures.of("V-" + i, TestHouse.START).score(7).build())));
    }
    assertThat(house.journal.check()).isEqualTo(new Verdict(6, null, null, head()));
  }

  @Test
  void shouldNotLetTheApplicationChangeOrRemoveAnEntry() {
    for (var sql :
        List.of(
            "UPDATE alerts.journal SET kind = 'closed'",
            "DELETE FROM alerts.journal",
            "TRUNCATE alerts.journal",
            "ALTER TABLE alerts.journal DISABLE TRIGGER ALL",
            "DROP TABLE alerts.journal")) {
      assertThatThrownBy(() -> house.database.read(handle -> handle.execute(sql)))
          .as(sql)
          .rootCause()
          .isInstanceOfSatisfying(
              SQLException.class, refusal -> assertThat(refusal.getSQLState()).isEqualTo("42501"));
    }
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldStopEvenTheOwnerWhoDoesNotMeanIt() {
    assertThatThrownBy(() -> TestHouse.execute(house.owner, "DELETE FROM alerts.journal"))
        .rootCause()
        .hasMessageContaining("the journal is append-only");
  }

  @Test
  void shouldFindAnAlteredEntry() {
    tamper("UPDATE alerts.journal SET body = replace(body, 'high', 'low') WHERE sequence = 3");

    assertFault(3, "entry 3 was altered: its hash is not that of its content");
  }

  @Test
  void shouldFindAnAlteredTimeOrPerson() {
    tamper("UPDATE alerts.journal SET at = at - interval '10 minutes' WHERE sequence = 4");

    assertFault(4, "entry 4 was altered: its hash is not that of its content");
  }

  @Test
  void shouldFindARemovedEntry() {
    tamper("DELETE FROM alerts.journal WHERE sequence = 2");

    assertFault(2, "entry 2 is missing");
  }

  @Test
  void shouldFindThatTheEndIsMissing() {
    tamper("DELETE FROM alerts.journal WHERE sequence >= 5");

    assertFault(5, "entry 5 is missing at the end");
  }

  @Test
  void shouldFindARemovedEntryWhoseGapWasClosed() {
    tamper(
        "DELETE FROM alerts.journal WHERE sequence = 2;"
            + "UPDATE alerts.journal SET sequence = sequence - 1 WHERE sequence > 2");

    assertFault(2, "entry 2 was moved here or replaced: neither its hash nor its predecessor fits");
  }

  @Test
  void shouldFindAnInsertedEntry() {
    tamper(
        "UPDATE alerts.journal SET sequence = sequence + 100 WHERE sequence > 3;"
            + "UPDATE alerts.journal SET sequence = sequence - 99 WHERE sequence > 100;"
            + "INSERT INTO alerts.journal SELECT 4, at, subject, kind, by, body, previous, hash"
            + " FROM alerts.journal WHERE sequence = 3");

    assertFault(4, "entry 4 was moved here or replaced: neither its hash nor its predecessor fits");
  }

  @Test
  void shouldFindAnEntryAddedAtTheEnd() {
    tamper(
        "INSERT INTO alerts.journal SELECT 7, at, subject, kind, by, body, hash, hash"
            + " FROM alerts.journal WHERE sequence = 6");

    assertFault(7, "entry 7 was altered: its hash is not that of its content");
  }

  @Test
  void shouldFindTwoEntriesThatWereSwapped() {
    tamper(
        "UPDATE alerts.journal SET sequence = 99 WHERE sequence = 3;"
            + "UPDATE alerts.journal SET sequence = 3 WHERE sequence = 4;"
            + "UPDATE alerts.journal SET sequence = 4 WHERE sequence = 99");

    assertFault(3, "entry 3 was moved here or replaced: neither its hash nor its predecessor fits");
  }

  @Test
  void shouldFindAWholeChainThatTheOwnerWroteAnew() {
    var last = house.journal.last().orElseThrow();
    var anchor = JournalChain.anchor(null, last, TestHouse.START);
    var forged = new ArrayList<Entry>();
    var head = JournalChain.START;
    for (var entry : house.journal.after(0, 10)) {
      var body = entry.body().replace("high", "low");
      var next =
          JournalChain.next(
              entry.sequence() - 1,
              head,
              entry.at(),
              entry.subject(),
              entry.kind(),
              entry.by(),
              body);
      forged.add(next);
      head = next.hash();
    }
    forged.forEach(
        entry ->
            tamper(
                "UPDATE alerts.journal SET body = '%s', previous = '%s', hash = '%s' WHERE sequence = %d"
                    .formatted(
                        entry.body().replace("'", "''"),
                        entry.previous(),
                        entry.hash(),
                        entry.sequence())));
    TestHouse.execute(house.owner, "UPDATE alerts.journal_head SET hash = '" + head + "'");

    assertThat(house.journal.check().sound()).isTrue();
    var check = JournalChain.check(List.of(anchor));
    house.journal.after(0, 10).forEach(check::take);
    assertThat(check.finish().fault()).startsWith("the chain was written anew: an entry from 1");
  }

  private void assertFault(long at, String what) {
    var verdict = house.journal.check();
    assertThat(verdict.sound()).isFalse();
    assertThat(verdict.fault()).isEqualTo(what);
    assertThat(verdict.at()).isEqualTo(at);
  }

  private void tamper(String sql) {
    TestHouse.execute(
        house.owner,
        "ALTER TABLE alerts.journal DISABLE TRIGGER ALL;"
            + sql
            + ";ALTER TABLE alerts.journal ENABLE TRIGGER ALL");
  }

  private String head() {
    var entries = house.journal.after(5, 10);
    return entries.get(0).hash();
  }
}
