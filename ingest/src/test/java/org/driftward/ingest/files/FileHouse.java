package org.driftward.ingest.files;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.FileImport.RejectedRow;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.kafka.House;
import org.driftward.ingest.store.FileMappings;
import org.driftward.ingest.store.ImportQueue;
import org.driftward.ingest.store.Imports;
import org.driftward.ingest.store.IntakeDatabase;
import org.driftward.ingest.store.Upload;
import org.jspecify.annotations.Nullable;

/** One process that brings files in: intake on a real broker, files in a real database. */
final class FileHouse implements AutoCloseable {

  static final String ACCOUNT = "feeds";
  private static final Sight SIGHT = new Sight(ACCOUNT, WardScope.NONE);

  final House house;
  final Imports imports;
  final ImportQueue queue;
  final ImportStep step;
  final FileGate gate;
  final FileMappings mappings;

  FileHouse(KafkaAccess access, IntakeDatabase database, Duration patience) {
    this.house = new House(access, patience);
    var clock = Clock.fixed(House.NOW, ZoneOffset.UTC);
    var limits = new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000);
    var readers = new FileReaders(Catalogue.shipped(), new AssessmentReader(limits));
    var rules = new IntakeRules(Catalogue.shipped(), limits);
    var files = new FileIntake(house.intake, house.directory, rules);
    this.imports = new Imports(database.database);
    this.queue = new ImportQueue(database.database, clock);
    this.mappings = new FileMappings(database.database, clock);
    this.step = new ImportStep(readers, files, house.intake);
    this.gate = new FileGate(readers, files, mappings, house.intake, clock);
  }

  FileImport begin(String key, String contentType, @Nullable String mapping, WardScope wards) {
    var text = mapping == null ? null : mappings.find(mapping).orElseThrow();
    return imports.begin(
        new Upload(
            "import-" + key,
            key,
            key + ".csv",
            contentType,
            mapping,
            text,
            ACCOUNT,
            wards,
            House.NOW,
            null));
  }

  /** The whole file in parts of this many bytes, each worked at before the next one comes. */
  FileImport bringIn(String key, String file, int part, WardScope wards) {
    var begun = begin(key, "text/csv", null, wards);
    var bytes = file.getBytes(UTF_8);
    for (int from = 0; from < bytes.length; from += part) {
      int to = Math.min(from + part, bytes.length);
      imports.add(begun.id(), from, Arrays.copyOfRange(bytes, from, to), to == bytes.length);
      work();
    }
    return now(begun.id());
  }

  /** Until there is nothing more to do. */
  void work() {
    while (queue.work(step)) {
      // The next batch.
    }
  }

  FileImport now(String id) {
    return imports.find(id, SIGHT).orElseThrow();
  }

  List<RejectedRow> rejected(String id) {
    var rows = new ArrayList<RejectedRow>();
    imports.eachRejected(id, rows::add);
    return rows;
  }

  @Override
  public void close() {
    house.close();
  }
}
