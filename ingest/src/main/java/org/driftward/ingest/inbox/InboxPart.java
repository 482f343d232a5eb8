package org.driftward.ingest.inbox;

import io.quarkus.arc.All;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.errors.WakeupException;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.kafka.IntakeMetrics;
import org.driftward.ingest.kafka.KafkaEncounterDirectory;
import org.driftward.ingest.kafka.KafkaIntake;
import org.driftward.ingest.kafka.Tally;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code driftward.inbox}, batch by batch: judges each record and commits, in one
 * transaction, what follows and how far it has read. All processes share the partitions. What it
 * needs and does not answer makes it pause, in its place in the group; after any failure of Kafka
 * everything is thrown away and begun anew from what was committed.
 */
@Singleton
public class InboxPart implements RolePart, Worker.Round {

  private static final Duration POLL = Duration.ofMillis(200);
  private static final long MEASURE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final KafkaAccess access;
  private final IngestConfig config;
  private final Judge judge;
  private final IntakeMetrics tally;
  private final InboxMetrics metrics;
  private final Breather breather = new Breather(System::nanoTime);
  private final Worker work = new Worker("inbox", this);
  private final String id = "driftward-inbox-" + UUID.randomUUID();
  private volatile @Nullable InboxReader reader;
  private @Nullable Transactions transactions;
  private volatile boolean paused;
  private long measured;

  public InboxPart(
      KafkaAccess access,
      IngestConfig config,
      KafkaIntake intake,
      KafkaEncounterDirectory directory,
      IntakeRules rules,
      @All List<Gate> gates,
      IntakeMetrics tally,
      InboxMetrics metrics,
      Clock clock) {
    this.access = access;
    this.config = config;
    int largest = Math.toIntExact(config.maxBody().asLongValue());
    this.judge = new Judge(intake, directory, rules, gates, largest, clock);
    this.tally = tally;
    this.metrics = metrics;
  }

  /** Waits in its poll, so it never needs to rest. */
  @Override
  public Duration run() {
    try {
      var open = open();
      if (breather.due()) {
        open.resume();
      } else if (breather.pausing()) {
        open.pause();
      }
      var records = open.poll(POLL);
      if (!records.isEmpty()) {
        work(open, records);
      }
      measure(open);
      return Duration.ZERO;
    } catch (WakeupException e) {
      return Duration.ZERO;
    } catch (RuntimeException | Error e) {
      leave();
      throw e;
    }
  }

  private void work(InboxReader open, ConsumerRecords<String, byte[]> batch) {
    long began = System.nanoTime();
    var records = new ArrayList<ProducerRecord<String, byte[]>>();
    var counts = new ArrayList<Consumer<Tally>>();
    try {
      judge.nextBatch();
      for (var one : batch) {
        var judged = judge.judge(one);
        records.addAll(judged.records());
        counts.addAll(judged.counts());
      }
    } catch (UnavailableException e) {
      breather.pause();
      told(true);
      open.pauseBefore(batch);
      return;
    }
    transactions().commit(records, InboxReader.behind(batch), open.group());
    metrics.transaction().record(System.nanoTime() - began, TimeUnit.NANOSECONDS);
    metrics.read(batch.count());
    counts.forEach(count -> count.accept(tally));
    breather.recovered();
    told(false);
  }

  private void told(boolean is) {
    paused = is;
    metrics.paused(is);
  }

  private void measure(InboxReader open) {
    long now = System.nanoTime();
    if (now - measured >= MEASURE_NANOS) {
      measured = now;
      open.measure();
    }
  }

  private InboxReader open() {
    var known = reader;
    if (known == null) {
      known = new InboxReader(access, config.inbox().batch(), metrics);
      reader = known;
    }
    return known;
  }

  private Transactions transactions() {
    var known = transactions;
    if (known == null) {
      known = new Transactions(access, config, id);
      transactions = known;
    }
    return known;
  }

  @Override
  public void leave() {
    var writing = transactions;
    transactions = null;
    if (writing != null) {
      writing.close();
    }
    var reading = reader;
    reader = null;
    if (reading != null) {
      reading.close();
    }
    breather.recovered();
    told(false);
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "inbox";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stopSoon();
    var reading = reader;
    if (reading != null) {
      reading.wake();
    }
    work.stop();
  }

  @Override
  public Condition condition() {
    return paused
        ? Condition.ill("paused until the encounters can be asked for")
        : work.condition();
  }
}
