package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.DeliveryDesk.Tone;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.dashboard.contract.Setting;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Cards;
import org.driftward.dashboard.core.Total;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** An invented ward at one moment of one night. */
final class Sample {

  static final Instant NOW = Instant.parse("2026-01-05T03:12:00Z");
  static final ZoneId ZONE = ZoneOffset.UTC;
  static final Reader CHARGE = new Reader("ines.varga", Set.of("charge"));
  static final Findings FINDINGS = new Findings(Catalogue.shipped());

  static final Populations POPULATIONS =
      new Populations(new TreeSet<>(Set.of("child", "pregnant")));

  static final List<Warning> WARNINGS = List.of(new Warning("Nobody listens.", "Look yourself."));

  /** One alarm to sound, a warning, and a channel that nobody configured. */
  static final Telling TELLING =
      Telling.of(
          List.of(new Tone("E-V-104-1", 7, Level.HIGH)),
          WARNINGS,
          List.of("The policy tells people by mail, which is not configured"));

  static final List<Delivery> TOLD =
      List.of(
          told("Team pager", Channel.WEBHOOK, State.DELIVERED, null),
          told("Charge phone", Channel.MAIL, State.GIVEN_UP, "the mail server refused it, 550"));

  private static final Cards CARDS = new Cards(BigDecimal.valueOf(7));

  private Sample() {}

  private static Delivery told(
      String recipient, Channel channel, State state, @Nullable String why) {
    return new Delivery(7, 0, channel, recipient, state, 1, ago(3), why);
  }

  static Frame frame(String here) {
    return new Frame(
        new Setting(true, 60),
        NOW,
        ZONE,
        "Ines Varga",
        List.of(
            new Frame.Link("/wards/alder", "Ward alder"),
            new Frame.Link("/wards/birch", "Ward birch"),
            new Frame.Link("/response", "Response")),
        here,
        "token-of-the-test",
        "1");
  }

  static Frame stranger() {
    return new Frame(new Setting(true, 60), NOW, ZONE, null, List.of(), "/sign-in", "", "1");
  }

  static Instant ago(int minutes) {
    return NOW.minus(Duration.ofMinutes(minutes));
  }

  static Instant in(int minutes) {
    return NOW.plus(Duration.ofMinutes(minutes));
  }

  static Encounter encounter(
      String id, @Nullable String bed, String name, int age, Patient.Sex sex) {
    return new Encounter(
        id,
        new Patient("P-" + id.substring(2), name, LocalDate.of(2025 - age, 3, 9), sex),
        List.of(new Stay("alder", bed, ago(3000))),
        ago(3000),
        null,
        null,
        1);
  }

  static Score score(
      int low, int high, @Nullable Integer usual, List<String> missing, List<ScoredInput> inputs) {
    return new Score(
        "news2",
        "NEWS2",
        "2017.1",
        BigDecimal.valueOf(low),
        BigDecimal.valueOf(high),
        missing.isEmpty(),
        low >= 7 ? "high" : low >= 5 ? "medium" : "low",
        high >= 7 ? "high" : high >= 5 ? "medium" : "low",
        3,
        usual == null ? null : BigDecimal.valueOf(usual),
        missing,
        inputs);
  }

  static Snapshot snapshot(String encounter, Score score, int dueIn) {
    return new Snapshot(
        encounter,
        ago(40),
        "A-" + encounter,
        7,
        true,
        false,
        "shipped-1",
        0,
        List.of(score),
        List.of(),
        List.of(),
        List.of(),
        ago(40),
        List.of(),
        in(dueIn),
        Duration.ofHours(1),
        "NEWS2 of 5 or more",
        null);
  }

  /** Hourly totals up to now, oldest first; a negative one is incomplete by three points. */
  static List<Total> totals(int... lows) {
    var totals = new ArrayList<Total>();
    for (int i = 0; i < lows.length; i++) {
      int low = Math.abs(lows[i]);
      totals.add(
          new Total(
              ago(60 * (lows.length - i)),
              BigDecimal.valueOf(low),
              BigDecimal.valueOf(lows[i] < 0 ? low + 3 : low)));
    }
    return totals;
  }

  static Episode open(String encounter, Level level, int minutes, String... reasons) {
    return episode(
        encounter, level, EpisodeState.OPEN, null, Awaiting.ACKNOWLEDGEMENT, 11, minutes, reasons);
  }

  static Episode episode(
      String encounter,
      Level level,
      EpisodeState state,
      @Nullable String owner,
      Awaiting awaiting,
      int dueIn,
      int openedAgo,
      String... reasons) {
    return new Episode(
        "E-" + encounter,
        2,
        encounter,
        "alder",
        "4",
        state,
        level,
        owner == null ? null : owner.toLowerCase(Locale.ROOT).replace(' ', '.'),
        owner,
        ago(openedAgo),
        in(dueIn),
        awaiting,
        1,
        level == Level.HIGH ? "charge nurse, response team" : "charge nurse",
        Stream.of(reasons)
            .map(words -> new Reason("a-rule", level, words, ago(openedAgo)))
            .toList(),
        null,
        null,
        null,
        null);
  }

  static Card card(
      Encounter encounter,
      @Nullable Snapshot snapshot,
      @Nullable CarePlan plan,
      @Nullable Episode episode,
      List<Total> totals) {
    boolean told = episode != null && episode.level() == Level.HIGH;
    return CARDS.card(
        new Cards.Known(encounter, snapshot, plan, episode, totals), told ? TOLD : List.of(), NOW);
  }

  static Card quiet(String id, String bed, String name, int total, int dueIn, int... lows) {
    return card(
        encounter(id, bed, name, 61, Patient.Sex.FEMALE),
        snapshot(id, score(total, total, total, List.of(), List.of()), dueIn),
        null,
        null,
        totals(lows));
  }

  static CarePlan ceiling(String encounter) {
    return new CarePlan(
        encounter,
        1,
        2,
        List.of(new CarePlan.Limit("heart-rate", BigDecimal.valueOf(45), BigDecimal.valueOf(115))),
        null,
        "ward-based care, no intensive care",
        null,
        "agreed with the patient on the round",
        "m.sorensen",
        ago(600),
        in(2000));
  }

  static Board board() {
    return SampleWard.board();
  }
}
