package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.awaitility.core.ConditionFactory;
import org.driftward.deploy.command.Commands;
import org.driftward.deploy.whole.Pager.Page;
import org.driftward.testing.Nightly;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two instances of alerts, a broker and a database, each a process of its own; one of the four is
 * killed without a word at a random moment, again and again, while patients fall ill. No escalation
 * may be lost, none be told twice but under the same key, and the journal must hold.
 *
 * <p>Every patient's ladder has three rungs of which the last waits for long, and each tells one
 * recipient by a call and by a letter. Each is killed once, and five times at night; {@code
 * -Ddriftward.kill.rounds} and {@code -Ddriftward.kill.seed} choose how often and in which order;
 * what was measured is printed for docs/performance.md.
 */
class KillIT {

  private static final int ROUNDS =
      Integer.getInteger("driftward.kill.rounds", Nightly.count(4, 20));
  private static final long SEED = Long.getLong("driftward.kill.seed", 5);
  private static final Duration PATIENCE = Duration.ofMinutes(3);
  private static final Duration LONGEST_CALM = Duration.ofSeconds(4);

  /** Enough for one of them to come from most of the six partitions. */
  private static final int WITNESSES = 6;

  private static final int RUNGS = Ladders.RUNGS;

  private enum Victim {
    FIRST,
    SECOND,
    BROKER,
    DATABASE
  }

  @TempDir Path folder;

  private final Random random = new Random(SEED);
  private final Map<Victim, List<Duration>> takeOver = new TreeMap<>();

  @Test
  void shouldLoseAndDoubleNoEscalationWhateverIsKilled() throws Exception {
    try (var pager = new Pager();
        var letters = new LetterBox();
        var outside = new Outside(folder, BrokerProcess::start)) {
      var ladders = new Ladders(folder, outside, pager, letters);
      var episodes = killAgainAndAgain(ladders, outside, pager, letters);
      journalHolds(ladders, pager, letters, episodes);
      pagedOnce(pager, episodes);
      writtenOnce(letters, episodes);
      report(pager, letters);
    }
  }

  /** Returns the episodes that there must be. */
  private List<String> killAgainAndAgain(
      Ladders ladders, Outside outside, Pager pager, LetterBox letters) throws Exception {
    try (var two = ladders.startTwo();
        var feed = new SnapshotFeed(outside)) {
      feed.begin();
      for (var victim : victims()) {
        Thread.sleep(random.nextInt((int) LONGEST_CALM.toMillis()));
        kill(victim, two, outside, feed, pager);
      }
      var episodes = feed.end();
      patiently().until(() -> missing(pager, episodes).isEmpty());
      int keys = episodes.size() * RUNGS;
      patiently().until(() -> letters.byKey().size() >= keys);
      return episodes;
    }
  }

  /** Each equally often, in an order that the seed chooses. */
  private List<Victim> victims() {
    var all = Victim.values();
    var victims =
        IntStream.range(0, ROUNDS)
            .mapToObj(round -> all[round % all.length])
            .collect(Collectors.toCollection(ArrayList::new));
    Collections.shuffle(victims, random);
    return victims;
  }

  private void kill(
      Victim victim, Ladders.Two two, Outside outside, SnapshotFeed feed, Pager pager) {
    switch (victim) {
      case FIRST -> two.kill(0);
      case SECOND -> two.kill(1);
      case BROKER -> outside.killBroker();
      case DATABASE -> outside.killDatabase();
    }
    var killed = System.nanoTime();
    var witnesses = Stream.generate(feed::ill).limit(WITNESSES).toList();
    switch (victim) {
      case FIRST -> two.launch(0);
      case SECOND -> two.launch(1);
      case BROKER -> outside.bringBrokerBack();
      case DATABASE -> outside.bringDatabaseBack();
    }
    patiently().until(() -> pager.hasAll(witnesses, 0));
    var lasted = Duration.ofNanos(System.nanoTime() - killed);
    takeOver.computeIfAbsent(victim, it -> new ArrayList<>()).add(lasted);
    System.out.printf("Killed %s, taken over after %d ms%n", victim, lasted.toMillis());
  }

  /** The mail server's threads die noisily with the clients that are killed; that is no failure. */
  private static ConditionFactory patiently() {
    return await().dontCatchUncaughtExceptions().atMost(PATIENCE);
  }

  /** Rungs of which the pager has not heard. */
  private static List<String> missing(Pager pager, List<String> episodes) {
    var told = pager.pages().stream().map(KillIT::rung).collect(Collectors.toSet());
    return expected(episodes).filter(rung -> !told.contains(rung)).toList();
  }

  private static Stream<String> expected(List<String> episodes) {
    return episodes.stream()
        .flatMap(id -> IntStream.range(0, RUNGS).mapToObj(rung -> id + " rung " + rung));
  }

  private static String rung(Page page) {
    return page.episode() + " rung " + page.rung();
  }

  private static void pagedOnce(Pager pager, List<String> episodes) {
    assertThat(pager.pages())
        .as("one key for each rung")
        .extracting(KillIT::rung)
        .containsExactlyInAnyOrderElementsOf(expected(episodes).toList());
    assertThat(pager.byKey().values())
        .as("a repetition says the same")
        .allSatisfy(calls -> assertThat(calls).extracting(Page::body).containsOnly(body(calls)));
  }

  private static JsonNode body(List<Page> calls) {
    return calls.get(0).body();
  }

  private static void writtenOnce(LetterBox letters, List<String> episodes) {
    var byKey = letters.byKey();
    assertThat(byKey).as("one key for each rung").hasSize(episodes.size() * RUNGS);
    assertThat(byKey.values())
        .as("a repetition says the same")
        .allSatisfy(texts -> assertThat(new HashSet<>(texts)).hasSize(1));
    assertThat(byKey.values().stream().map(texts -> texts.get(0)).toList())
        .as("every letter another one")
        .doesNotHaveDuplicates();
  }

  /** Read, and its chain checked, through an instance that has seen nothing of this. */
  private static void journalHolds(
      Ladders ladders, Pager pager, LetterBox letters, List<String> episodes) {
    try (var reader = ladders.startReader()) {
      patiently()
          .pollInterval(Duration.ofSeconds(1))
          .untilAsserted(
              () ->
                  assertThat(delivered(journal(reader)))
                      .as("what is in the journal is sent, what is sent is in the journal")
                      .containsExactlyInAnyOrderElementsOf(told(pager, letters)));
      assertThat(journalCheck(reader)).as("journal check").isZero();
      var stories = stories(journal(reader));
      assertThat(stories.keySet()).containsExactlyInAnyOrderElementsOf(episodes);
      assertThat(stories.values())
          .allSatisfy(
              kinds -> assertThat(kinds).containsExactly("opened", "escalated", "escalated"));
    }
  }

  private static Set<String> told(Pager pager, LetterBox letters) {
    var told = new TreeSet<>(pager.byKey().keySet());
    told.addAll(letters.byKey().keySet());
    return told;
  }

  private static List<String> delivered(List<JsonNode> journal) {
    return journal.stream()
        .filter(entry -> entry.get("kind").asText().equals("delivered"))
        .map(entry -> entry.get("body").asText().replaceAll(".*\"key\":\"([^\"]*)\".*", "$1"))
        .toList();
  }

  /** What happened to each episode, oldest first. */
  private static Map<String, List<String>> stories(List<JsonNode> journal) {
    var about = "episode/";
    return journal.stream()
        .filter(entry -> entry.get("subject").asText().startsWith(about))
        .collect(
            Collectors.groupingBy(
                entry -> entry.get("subject").asText().substring(about.length()),
                Collectors.mapping(entry -> entry.get("kind").asText(), Collectors.toList())));
  }

  private static int journalCheck(RunningApp reader) {
    return Commands.run(
        "journal",
        "check",
        "--server=" + reader.address(),
        "--user=admin",
        "--password=" + RunningApp.ADMIN_PASSWORD);
  }

  private static List<JsonNode> journal(RunningApp reader) {
    var entries = new ArrayList<JsonNode>();
    long last = 0;
    for (boolean more = true; more; ) {
      var page = reader.asAdmin().get("/api/journal?limit=1000&after=" + last).json();
      page.forEach(entries::add);
      more = !page.isEmpty();
      last = entries.get(entries.size() - 1).get("sequence").asLong();
    }
    return entries;
  }

  private void report(Pager pager, LetterBox letters) {
    System.out.printf(
        "Kill test: seed %d, %d rounds, %d alarms; sent again under the same key: %d calls,"
            + " %d letters%n",
        SEED, ROUNDS, pager.byKey().size(), repeated(pager.byKey()), repeated(letters.byKey()));
    takeOver.forEach(
        (victim, times) -> print("from the kill to the last new alarm, " + victim, times));
    print("a clock took effect late by", lateness(pager));
  }

  private static long repeated(Map<String, ? extends List<?>> byKey) {
    return byKey.values().stream().filter(calls -> calls.size() > 1).count();
  }

  /** How long after the end of each rung the next one began. */
  private static List<Duration> lateness(Pager pager) {
    var late = new ArrayList<Duration>();
    var byEpisode = pager.pages().stream().collect(Collectors.groupingBy(Page::episode));
    for (var pages : byEpisode.values()) {
      var due = pages.stream().collect(Collectors.toMap(Page::rung, Page::answerBy));
      pages.stream()
          .filter(page -> page.rung() > 0)
          .forEach(page -> late.add(Duration.between(due.get(page.rung() - 1), page.at())));
    }
    return late;
  }

  private static void print(String what, List<Duration> times) {
    var sorted = times.stream().sorted().toList();
    System.out.printf(
        "  %s: median %d ms, worst %d ms, n = %d%n",
        what,
        sorted.get(sorted.size() / 2).toMillis(),
        sorted.get(sorted.size() - 1).toMillis(),
        sorted.size());
  }
}
