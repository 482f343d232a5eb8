package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.Journal;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.episode.Happening.PlanSigned;
import org.driftward.alerts.core.journal.Chain;
import org.driftward.alerts.core.journal.ChainCheck;
import org.driftward.alerts.core.journal.Line;
import org.driftward.alerts.core.journal.Lines;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Topic;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;

/** The journal in PostgreSQL, and the outbox that is filled with it. */
@Singleton
public class JournalTable implements Journal {

  private static final String COLUMNS = "sequence, at, subject, kind, by, body, previous, hash";
  private static final int ROWS_AT_ONCE = 1000;

  private final Database database;

  public JournalTable(Database database) {
    this.database = database;
  }

  @Override
  public List<Entry> after(long sequence, int limit) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT "
                        + COLUMNS
                        + " FROM alerts.journal WHERE sequence > :sequence"
                        + " ORDER BY sequence LIMIT :limit")
                .bind("sequence", sequence)
                .bind("limit", limit)
                .map(JournalTable::entry)
                .list());
  }

  @Override
  public Optional<Entry> last() {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT " + COLUMNS + " FROM alerts.journal ORDER BY sequence DESC LIMIT 1")
                .map(JournalTable::entry)
                .findOne());
  }

  /** Reads entries and end as of one moment, however many are written meanwhile. */
  @Override
  public Verdict check() {
    return database.read(
        handle ->
            handle.inTransaction(
                TransactionIsolationLevel.REPEATABLE_READ,
                snapshot -> {
                  snapshot.execute("SET TRANSACTION READ ONLY");
                  var check = new ChainCheck();
                  var rows =
                      snapshot
                          .createQuery(
                              "SELECT " + COLUMNS + " FROM alerts.journal ORDER BY sequence")
                          .setFetchSize(ROWS_AT_ONCE)
                          .map(JournalTable::entry);
                  try (var entries = rows.iterator()) {
                    entries.forEachRemaining(check::take);
                  }
                  return check.finish(head(snapshot, ""));
                }));
  }

  /** The changes of one episode up to and with this entry, oldest first. */
  List<EpisodeChange> story(Handle handle, String episode, long upTo) {
    return story(handle, episode).stream().filter(one -> one.sequence() <= upTo).toList();
  }

  /** Every change of one episode, oldest first. */
  List<EpisodeChange> story(Handle handle, String episode) {
    return handle
        .createQuery(
            "SELECT " + COLUMNS + " FROM alerts.journal WHERE subject = :subject ORDER BY sequence")
        .bind("subject", Lines.subject(episode))
        .map(JournalTable::entry)
        .map(JournalTable::change)
        .list();
  }

  /**
   * Appends in this transaction; holds the end of the chain until it is over.
   *
   * @return the sequence of each happening's entry, in the same order
   */
  List<Long> append(Handle handle, List<Happening> happenings, Instant now) {
    var sequences = new ArrayList<Long>(happenings.size());
    if (happenings.isEmpty()) {
      return sequences;
    }
    var chain = head(handle, " FOR UPDATE");
    var entries = insert(handle);
    var outbox =
        handle.prepareBatch(
            "INSERT INTO alerts.outbox (sequence, topic, key, payload)"
                + " VALUES (:sequence, :topic, :key, :payload)");
    for (var happening : happenings) {
      var entry = chain.next(Lines.of(happening), now);
      bind(entries, entry);
      send(outbox, entry, happening);
      chain = chain.after(entry);
      sequences.add(entry.sequence());
    }
    entries.execute();
    if (outbox.size() > 0) {
      outbox.execute();
    }
    move(handle, chain);
    return sequences;
  }

  /** Appends one entry that no topic carries. */
  void append(Handle handle, Line line, Instant now) {
    var chain = head(handle, " FOR UPDATE");
    var entry = chain.next(line, now);
    var entries = insert(handle);
    bind(entries, entry);
    entries.execute();
    move(handle, chain.after(entry));
  }

  private static PreparedBatch insert(Handle handle) {
    return handle.prepareBatch(
        "INSERT INTO alerts.journal ("
            + COLUMNS
            + ")"
            + " VALUES (:sequence, :at, :subject, :kind, :by, :body, :previous, :hash)");
  }

  private static void bind(PreparedBatch batch, Entry entry) {
    batch
        .bind("sequence", entry.sequence())
        .bind("at", entry.at())
        .bind("subject", entry.subject())
        .bind("kind", entry.kind())
        .bind("by", entry.by())
        .bind("body", entry.body())
        .bind("previous", entry.previous())
        .bind("hash", entry.hash())
        .add();
  }

  private static void send(PreparedBatch outbox, Entry entry, Happening happening) {
    if (happening instanceof EpisodeChanged changed) {
      var payload = Json.CHANGE.text(published(entry, changed));
      add(outbox, entry, Topic.EPISODES, changed.episode().encounter(), payload);
    } else if (happening instanceof PlanSigned signed) {
      var payload = Json.CARE_PLAN.text(signed.plan());
      add(outbox, entry, Topic.CARE_PLANS, signed.plan().encounter(), payload);
    }
  }

  private static void add(
      PreparedBatch outbox, Entry entry, Topic topic, String key, String payload) {
    outbox
        .bind("sequence", entry.sequence())
        .bind("topic", topic.topic())
        .bind("key", key)
        .bind("payload", payload)
        .add();
  }

  private static EpisodeChange published(Entry entry, EpisodeChanged changed) {
    return new EpisodeChange(
        entry.sequence(),
        entry.at(),
        entry.kind(),
        entry.by(),
        changed.note(),
        changed.reason(),
        changed.episode());
  }

  static EpisodeChange change(Entry entry) {
    var body = Json.CHANGE_BODY.read(entry.body());
    return new EpisodeChange(
        entry.sequence(),
        entry.at(),
        entry.kind(),
        entry.by(),
        body.note(),
        body.reason(),
        body.episode());
  }

  private static Chain head(Handle handle, String lock) {
    return handle
        .createQuery("SELECT sequence, hash FROM alerts.journal_head" + lock)
        .map((row, context) -> new Chain(row.getLong("sequence"), row.getString("hash")))
        .one();
  }

  private static void move(Handle handle, Chain chain) {
    handle
        .createUpdate("UPDATE alerts.journal_head SET sequence = :sequence, hash = :hash")
        .bind("sequence", chain.sequence())
        .bind("hash", chain.hash())
        .execute();
  }

  static Entry entry(ResultSet row, StatementContext context) throws SQLException {
    return new Entry(
        row.getLong("sequence"),
        row.getObject("at", OffsetDateTime.class).toInstant(),
        row.getString("subject"),
        row.getString("kind"),
        row.getString("by"),
        row.getString("body"),
        row.getString("previous"),
        row.getString("hash"));
  }
}
