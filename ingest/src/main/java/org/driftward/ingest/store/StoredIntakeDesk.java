package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.IntakeDesk;
import org.jspecify.annotations.Nullable;

/** The desk on PostgreSQL. */
@Singleton
public class StoredIntakeDesk implements IntakeDesk {

  private static final int PAGE = 25;

  /** Each is one row in the queue; more than this is asked for again, from the next page on. */
  private static final int MOST_AT_ONCE = 10_000;

  private final IntakeStore database;
  private final Imports imports;
  private final Clock clock;

  public StoredIntakeDesk(IntakeStore database, Imports imports, Clock clock) {
    this.database = database;
    this.imports = imports;
    this.clock = clock;
  }

  @Override
  public List<Feed> feeds() {
    return database.read(handle -> Feeds.list(handle, clock.instant()));
  }

  @Override
  public List<FileImport> imports(Sight sight) {
    return imports.newest(sight);
  }

  @Override
  public RefusalPage refusals(Filter filter, Sight sight) {
    return database.read(
        handle -> {
          var lines = Refusals.list(handle, filter, sight, PAGE + 1);
          boolean more = lines.size() > PAGE;
          var shown = more ? lines.subList(0, PAGE) : lines;
          var next = more ? shown.get(PAGE - 1).id() : null;
          return new RefusalPage(shown, next, Refusals.rules(handle, sight));
        });
  }

  @Override
  public Optional<Refusal> refusal(String id, Sight sight) {
    return database.read(
        handle ->
            Refusals.find(handle, id, sight)
                .map(
                    line -> new Refusal(line, Refusals.bytes(handle, id), Replays.of(handle, id))));
  }

  @Override
  public boolean replay(String refusal, @Nullable Bytes mended, Sight sight) {
    return database.transaction(
        handle ->
            Refusals.find(handle, refusal, sight).isPresent()
                && Replays.ask(handle, refusal, mended, sight, clock.instant()));
  }

  @Override
  public int replayAll(Filter filter, Sight sight) {
    return database.transaction(
        handle -> {
          int asked = 0;
          for (var line : Refusals.list(handle, filter, sight, MOST_AT_ONCE)) {
            boolean done = line.state() == State.ACCEPTED || line.state() == State.WAITING;
            if (!done && Replays.ask(handle, line.id(), null, sight, clock.instant())) {
              asked++;
            }
          }
          return asked;
        });
  }
}
