package org.driftward.alerts.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.journal.CanonicalJson;
import org.driftward.alerts.core.journal.Line;
import org.driftward.alerts.core.outreach.Progress;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/** One row of the table of deliveries, and its line in the journal. */
record DeliveryRow(
    String key,
    long notice,
    Channel channel,
    String recipient,
    String address,
    State state,
    int attempts,
    @Nullable String why) {

  static DeliveryRow map(ResultSet row, StatementContext context) throws SQLException {
    return new DeliveryRow(
        row.getString("key"),
        row.getLong("notice"),
        Word.parse(Channel.class, row.getString("channel")),
        row.getString("recipient"),
        row.getString("address"),
        Word.parse(State.class, row.getString("state")),
        row.getInt("attempts"),
        row.getString("why"));
  }

  /**
   * @return whether there was none with this key
   */
  static boolean insert(
      Handle handle, DeliveryRow row, List<String> audiences, @Nullable Instant next, Instant now) {
    return handle
            .createUpdate(
                "INSERT INTO alerts.delivery (key, notice, channel, recipient, address, audiences,"
                    + " state, attempts, next, changed, why) VALUES (:key, :notice, :channel,"
                    + " :recipient, :address, :audiences, :state, :attempts, :next, :now, :why)"
                    + " ON CONFLICT DO NOTHING")
            .bind("key", row.key)
            .bind("notice", row.notice)
            .bind("channel", row.channel.word())
            .bind("recipient", row.recipient)
            .bind("address", row.address)
            .bindArray("audiences", String.class, audiences)
            .bind("state", row.state.word())
            .bind("attempts", row.attempts)
            .bind("next", next)
            .bind("now", now)
            .bind("why", row.why)
            .execute()
        == 1;
  }

  /** Keeps what became of an attempt, and the journal hears of what is settled by it. */
  DeliveryRow moved(Handle handle, Progress progress, int made, Instant now) {
    handle
        .createUpdate(
            "UPDATE alerts.delivery SET state = :state, attempts = :attempts, next = :next,"
                + " changed = :now, why = :why, unheard = :unheard WHERE key = :key")
        .bind("key", key)
        .bind("state", progress.state().word())
        .bind("attempts", made)
        .bind("next", progress.next())
        .bind("now", now)
        .bind("why", progress.why())
        .bind("unheard", progress.state() == State.GIVEN_UP)
        .execute();
    return new DeliveryRow(
        key, notice, channel, recipient, address, progress.state(), made, progress.why());
  }

  /** Says no address: the policy that the journal keeps has them. */
  Line line() {
    var body = new HashMap<String, Object>();
    body.put("key", key);
    body.put("channel", channel);
    body.put("recipient", recipient);
    body.put("attempts", attempts);
    body.put("why", why);
    return new Line("notice/" + notice, state.word(), Happening.SERVICE, CanonicalJson.write(body));
  }

  /** Neither an address nor a name. */
  @Override
  public String toString() {
    return "DeliveryRow[" + key + " " + state.word() + "]";
  }
}
