package org.driftward.scoring.rescore;

import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Supervisor;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.scoring.config.ScoringConfig;
import org.driftward.scoring.core.compare.Difference;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.edition.EditionFile;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.rescore.Rescore.State;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The re-scorings of this process, one at a time. A restart forgets them; what was adopted stays.
 */
@Singleton
public class Rescores implements RolePart {

  private static final Logger LOG = Logger.getLogger(Rescores.class);

  private final KafkaAccess access;
  private final EditionsInForce editions;
  private final Adoption adoption;
  private final Path folder;
  private final Clock clock;
  private final Map<String, Rescore> all = new ConcurrentHashMap<>();
  private @Nullable Thread worker;

  public Rescores(KafkaAccess access, ScoringConfig config, EditionsInForce editions, Clock clock) {
    this.access = access;
    this.editions = editions;
    this.adoption = new Adoption(access, editions);
    this.folder = config.reports();
    this.clock = clock;
  }

  /** A call that does not apply to where things stand. */
  public static final class ConflictException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    ConflictException(String why) {
      super(why);
    }
  }

  /**
   * Begins to score the log again under an edition.
   *
   * @throws IllegalStateException naming text, line and fault if the edition is broken
   * @throws IllegalArgumentException if its version is that of another
   * @throws ConflictException while another re-scoring runs
   */
  public synchronized RescoreView begin(EditionFile file, String account) {
    var inForce = editions.editions();
    var candidate = editions.read(file);
    var beside = inForce.with(candidate);
    if (all.values().stream().anyMatch(one -> one.state() == State.RUNNING)) {
      throw new ConflictException("another re-scoring is running");
    }
    var id = UUID.randomUUID().toString();
    var rescore =
        new Rescore(
            id,
            file,
            candidate,
            inForce.versions(),
            account,
            clock.instant(),
            folder.resolve(id + ".ndjson"));
    all.put(id, rescore);
    var thread = new Thread(() -> run(rescore, inForce, beside), "rescore");
    thread.setDaemon(true);
    thread.start();
    worker = thread;
    return rescore.view();
  }

  /** Newest first. */
  public List<RescoreView> list() {
    return all.values().stream()
        .map(Rescore::view)
        .sorted(Comparator.comparing(RescoreView::startedAt).reversed())
        .toList();
  }

  public Optional<RescoreView> find(String id) {
    return Optional.ofNullable(all.get(id)).map(Rescore::view);
  }

  /**
   * Every difference of a finished re-scoring, by encounter and time; the caller closes the stream.
   *
   * @throws ConflictException while it runs, and if it failed
   */
  public Optional<Stream<Difference>> differences(String id) {
    return Optional.ofNullable(all.get(id))
        .map(
            rescore -> {
              if (rescore.state() != State.FINISHED && rescore.state() != State.ADOPTED) {
                throw new ConflictException("the re-scoring has not finished");
              }
              return Report.read(rescore.report());
            });
  }

  /**
   * Puts the edition of a finished re-scoring into force, in every process that scores. Returns
   * when this one knows it; encounters are then judged again one after another.
   *
   * @throws ConflictException if it has not finished, or another edition was adopted since
   */
  public synchronized Optional<RescoreView> adopt(String id, String account) {
    var rescore = all.get(id);
    if (rescore == null) {
      return Optional.empty();
    }
    if (rescore.state() != State.FINISHED) {
      throw new ConflictException("only a finished re-scoring can be adopted, and only once");
    }
    if (!editions.editions().versions().equals(rescore.against())) {
      throw new ConflictException("another edition was adopted since; score again");
    }
    var now = clock.instant();
    adoption.publish(rescore.file().adopted(account, now), rescore.candidate().version());
    rescore.end(State.ADOPTED, null, now);
    return Optional.of(rescore.view());
  }

  private void run(Rescore rescore, Editions inForce, Editions candidate) {
    try (var log = new LogReader(access);
        var report = new Report(rescore.report())) {
      new LogRecount(log, inForce, candidate, rescore.tally(), report).run();
    } catch (IOException | InterruptedException | RuntimeException | Error e) {
      rescore.end(State.FAILED, e.getClass().getSimpleName(), clock.instant());
      LOG.errorf("A re-scoring failed: failure=%s", e.getClass().getSimpleName());
      LOG.debug("Failure of a re-scoring", e);
      Supervisor.OF_THE_PROCESS.failed(name(), e);
      return;
    }
    rescore.end(State.FINISHED, null, clock.instant());
  }

  @Override
  public Role role() {
    return Role.SCORING;
  }

  @Override
  public String name() {
    return "rescores";
  }

  @Override
  public void start() {
    // Begins when somebody asks.
  }

  @Override
  public synchronized void stop() {
    if (worker != null) {
      worker.interrupt();
      worker = null;
    }
  }

  @Override
  public Condition condition() {
    return Condition.ok();
  }
}
