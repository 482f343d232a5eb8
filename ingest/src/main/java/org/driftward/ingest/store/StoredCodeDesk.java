package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.CodeDesk;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeRow;
import org.driftward.ingest.core.mapping.CodeRows;
import org.driftward.ingest.core.mapping.CodeRules;
import org.driftward.ingest.core.mapping.CodeTable;
import org.jdbi.v3.core.Handle;

/** The desk for codes on PostgreSQL. */
@Singleton
public class StoredCodeDesk implements CodeDesk {

  private static final int MOST_AT_ONCE = 10_000;

  private final IntakeStore database;
  private final StoredCodes stored;
  private final CodeMap codes;
  private final CodeRules rules;
  private final Clock clock;

  public StoredCodeDesk(
      IntakeStore database, StoredCodes stored, CodeMap codes, CodeRules rules, Clock clock) {
    this.database = database;
    this.stored = stored;
    this.codes = codes;
    this.rules = rules;
    this.clock = clock;
  }

  /** By the whole map, files included, as it is now. */
  @Override
  public List<Seen> unmapped(Sight sight) {
    stored.refresh();
    return database.read(handle -> ForeignCodes.mostFrequent(handle, sight)).stream()
        .filter(seen -> codes.find(seen.code()).isEmpty())
        .filter(seen -> !codes.isPanel(seen.code().system(), seen.code().code()))
        .toList();
  }

  @Override
  public List<Mapped> mapped(Sight sight) {
    return database.read(handle -> CodeMappings.inForce(handle, sight));
  }

  @Override
  public Optional<Opened> open(String id, Sight sight) {
    return database.read(
        handle ->
            ForeignCodes.find(handle, id, sight)
                .map(
                    seen ->
                        new Opened(
                            seen,
                            ForeignCodes.countHeld(handle, id),
                            CodeMappings.of(handle, id))));
  }

  @Override
  public Optional<String> map(String id, Meant meant, Sight sight) {
    if (meant.everyFeed() && !sight.wards().all()) {
      return Optional.of("An account of some wards says only what its own codes mean");
    }
    var fault =
        database.transaction(
            handle -> {
              CodeMappings.lock(handle);
              var seen = ForeignCodes.find(handle, id, sight);
              if (seen.isEmpty()) {
                return Optional.of("There is no such code");
              }
              var wrong = fault(handle, seen.get(), meant);
              if (wrong.isEmpty()) {
                CodeMappings.add(handle, id, clock.instant(), sight.account(), meant);
              }
              return wrong;
            });
    stored.refresh();
    return fault;
  }

  /** By the same rules as a file: with the row, everything that holds must still be a mapping. */
  private Optional<String> fault(Handle handle, Seen seen, Meant meant) {
    var rows = new ArrayList<CodeRow>();
    CodeMappings.inForce(handle).stream()
        .filter(other -> !other.code().id().equals(seen.id()))
        .map(
            other ->
                CodeMappings.row(other.code(), Objects.requireNonNull(other.decision().meant())))
        .filter(row -> rules.fault(row).isEmpty())
        .forEach(rows::add);
    rows.add(CodeMappings.row(seen, meant));
    try {
      var unused = CodeTable.of(rules, CodeRows.of(rows));
      return Optional.empty();
    } catch (IllegalArgumentException e) {
      return Optional.of(String.valueOf(e.getMessage()));
    }
  }

  @Override
  public boolean takeBack(String id, Sight sight) {
    boolean taken =
        database.transaction(
            handle -> {
              CodeMappings.lock(handle);
              boolean said =
                  ForeignCodes.find(handle, id, sight).isPresent()
                      && CodeMappings.of(handle, id).stream()
                          .findFirst()
                          .map(Decision::meant)
                          .isPresent();
              if (said) {
                CodeMappings.add(handle, id, clock.instant(), sight.account(), null);
              }
              return said;
            });
    stored.refresh();
    return taken;
  }

  @Override
  public int replay(String id, Sight sight) {
    return database.transaction(
        handle -> {
          int asked = 0;
          if (ForeignCodes.find(handle, id, sight).isPresent()) {
            for (var refusal : ForeignCodes.held(handle, id, MOST_AT_ONCE)) {
              if (Refusals.find(handle, refusal, sight).isPresent()
                  && Replays.ask(handle, refusal, null, sight, clock.instant())) {
                asked++;
              }
            }
          }
          return asked;
        });
  }
}
