package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.function.Consumer;
import org.driftward.ground.store.Database;

/** What the journal has and Kafka has not yet, in the journal's order. */
@Singleton
public class Outbox {

  /** Of all instances one sends at a time, or the order would not hold. Any number will do. */
  private static final long TURN = 0x6472_6966_7477_6172L;

  private final Database database;

  public Outbox(Database database) {
    this.database = database;
  }

  /** One message that waits. */
  public record Message(long sequence, String topic, String key, String payload) {}

  /**
   * Hands the oldest messages to the sender and forgets them when it returns: at least once.
   *
   * @param sender returns when all have been acknowledged, and throws if one has not
   * @return how many; 0 also while another instance is sending
   */
  public int send(int limit, Consumer<List<Message>> sender) {
    return database.transaction(
        handle -> {
          boolean turn =
              handle
                  .createQuery("SELECT pg_try_advisory_xact_lock(:turn)")
                  .bind("turn", TURN)
                  .mapTo(Boolean.class)
                  .one();
          if (!turn) {
            return 0;
          }
          var messages =
              handle
                  .createQuery(
                      "SELECT sequence, topic, key, payload FROM alerts.outbox"
                          + " ORDER BY sequence LIMIT :limit")
                  .bind("limit", limit)
                  .map(
                      (row, context) ->
                          new Message(
                              row.getLong("sequence"),
                              row.getString("topic"),
                              row.getString("key"),
                              row.getString("payload")))
                  .list();
          if (messages.isEmpty()) {
            return 0;
          }
          sender.accept(messages);
          handle
              .createUpdate("DELETE FROM alerts.outbox WHERE sequence <= :sequence")
              .bind("sequence", messages.get(messages.size() - 1).sequence())
              .execute();
          return messages.size();
        });
  }
}
