package org.driftward.deploy.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.apache.kafka.common.utils.Utils;
import org.driftward.deploy.whole.Outside;
import org.driftward.deploy.whole.RunningApp;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * Each intake of the packaged application, playing the one role of intake, beside a bare producer
 * that writes the same assessments to the same broker in the same run. Senders, application, broker
 * and database share this machine; the CPU told is the application's alone.
 */
@Command(name = "intake", description = "Assessments a second through each intake.")
final class IntakeBench implements Callable<Integer> {

  private static final String OWN = "/api/assessments";
  private static final String FHIR = "/fhir";
  private static final String CSV = "text/csv";
  private static final String NDJSON = "application/x-ndjson";
  private static final List<String> SERVER_JAVA = List.of("-XX:+UseSerialGC", "-Xmx768m");

  @Option(names = "--seconds", defaultValue = "20", description = "Measured for each intake.")
  private int seconds;

  @Option(names = "--warm-up", defaultValue = "20", description = "Seconds before that.")
  private int warmUp;

  @Option(names = "--encounters", defaultValue = "1000", description = "Patients in the house.")
  private int encounters;

  @Option(names = "--only", defaultValue = "", description = "Feeds whose name holds this.")
  private String only;

  @Override
  public Integer call() throws Exception {
    var folder = Files.createTempDirectory("driftward-bench-");
    try (var outside = new Outside(folder.resolve("outside"))) {
      admit(folder, outside.environment());
      var roles = new HashMap<>(outside.environment());
      roles.put("DRIFTWARD_ROLES", "ingest");
      try (var app = RunningApp.start(folder.resolve("ingest"), roles, SERVER_JAVA)) {
        measure(app, outside);
      }
    } finally {
      Utils.delete(folder.toFile());
    }
    return 0;
  }

  /** By the whole application, which also makes the tables and the account. */
  private void admit(Path folder, Map<String, String> environment) {
    try (var app = RunningApp.start(folder.resolve("all"), environment, SERVER_JAVA)) {
      Messages.admit(app, encounters);
    }
  }

  private void measure(RunningApp app, Outside outside) throws Exception {
    var messages = new Messages(encounters);
    System.out.printf(
        "%-34s %12s %14s %12s %10s%n",
        "intake", "messages/s", "assessments/s", "CPU us each", "of bare");
    double bare = 0;
    for (var feed : feeds(app, outside, messages)) {
      if (!feed.name().contains(only)) {
        feed.close();
        continue;
      }
      try (feed) {
        Pace.of(feed, Duration.ofSeconds(warmUp), app::cpu);
        var pace = Pace.of(feed, Duration.ofSeconds(seconds), app::cpu);
        bare = bare == 0 ? pace.assessmentsPerSecond() : bare;
        System.out.printf(
            "%-34s %12.0f %14.0f %12.0f %9.1f%%%n",
            feed.name(),
            pace.messagesPerSecond(),
            pace.assessmentsPerSecond(),
            pace.cpuMicros(),
            100 * pace.assessmentsPerSecond() / bare);
      }
    }
  }

  /** The bare producer first: the others are told beside it. */
  private static List<Feed> feeds(RunningApp app, Outside outside, Messages messages)
      throws Exception {
    var feeds = new ArrayList<Feed>();
    feeds.add(new BareProducer(outside.kafka(), messages));
    feeds.add(new HttpFeed("HTTP, one assessment", OWN, app.asAdmin(), messages::assessment, 1));
    feeds.add(new HttpFeed("HTTP, a hundred at once", OWN, app.asAdmin(), messages::hundred, 100));
    feeds.add(
        new HttpFeed(
            "FHIR, five Observations in a Bundle", FHIR, app.asAdmin(), messages::bundle, 5));
    feeds.add(new MllpFeed(app.mllpPort(), messages::hl7, 5));
    feeds.add(new InboxFeed(outside.kafka(), messages));
    feeds.add(new BareCopy(outside.kafka()));
    feeds.add(new UploadFeed("CSV, files of 5,000 rows", CSV, app.asAdmin(), messages::csv));
    feeds.add(new UploadFeed("NDJSON, the same", NDJSON, app.asAdmin(), messages::ndjson));
    return feeds;
  }
}
