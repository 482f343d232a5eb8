package org.driftward.alerts.core.handover;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.contract.Told;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Fills in a hand-over from the record, in the order of ISBAR: identify, situation, background,
 * assessment, recommendation (practice.md, section 4). It states facts with their times; it
 * assesses nothing, and what it recommends is the policy's and is marked as a draft.
 */
public final class Isbar {

  private final EscalationPolicy policy;
  private final Catalogue catalogue;
  private final Times times;

  public Isbar(EscalationPolicy policy, Catalogue catalogue, ZoneId zone) {
    this.policy = policy;
    this.catalogue = catalogue;
    this.times = new Times(zone);
  }

  public HandoverText draft(Facts facts) {
    return new HandoverText(
        identify(facts), situation(facts), background(facts), "", recommendation(facts));
  }

  private String identify(Facts facts) {
    var encounter = facts.page().encounter();
    var patient = encounter.patient();
    var role = facts.giver().roles().stream().sorted().collect(Collectors.joining(", "));
    return "I am %s (%s), ward %s.\nThe patient is %s, born %s, patient %s, stay %s, bed %s."
        .formatted(
            facts.giver().name(),
            role,
            encounter.ward(),
            Objects.requireNonNullElse(patient.name(), "of unknown name"),
            patient.birthDate() == null ? "on an unknown date" : times.date(patient.birthDate()),
            patient.id(),
            encounter.id(),
            Objects.requireNonNullElse(encounter.bed(), "not known"));
  }

  private String situation(Facts facts) {
    var lines = new ArrayList<String>();
    var episode = facts.episode();
    if (episode == null) {
      lines.add("No concern is open.");
    } else {
      lines.add(
          "Concern of %s priority, open since %s (%s)."
              .formatted(
                  episode.level().word(),
                  times.of(episode.openedAt(), facts.now()),
                  Plain.time(Duration.between(episode.openedAt(), facts.now()))));
      episode.reasons().stream().map(Reason::words).map(words -> "- " + words).forEach(lines::add);
      lines.add(hand(episode, facts));
    }
    var newest = facts.page().newest();
    lines.add(newest == null ? "No set has been recorded." : set(newest, facts.now()));
    return String.join("\n", lines);
  }

  private String hand(Episode episode, Facts facts) {
    return episode.ownerName() == null
        ? "Nobody has answered yet; " + told(Told.among(facts.present()), facts) + "."
        : "In the hands of " + episode.ownerName() + ", " + episode.state().word() + ".";
  }

  private String told(List<Told> told, Facts facts) {
    return told.isEmpty()
        ? "nobody has been reached beyond the board"
        : told.stream()
            .map(
                one ->
                    "%s by %s at %s"
                        .formatted(
                            one.person(), one.channel().word(), times.of(one.at(), facts.now())))
            .collect(Collectors.joining(", ", "told: ", ""));
  }

  private String set(Snapshot picture, Instant now) {
    var score = picture.leading();
    if (score == null) {
      return "No score applies.";
    }
    var values = score.inputs().stream().map(this::value).collect(Collectors.joining("; "));
    var missing =
        score.missing().isEmpty()
            ? ""
            : " Not measured, or too old: "
                + score.missing().stream().map(this::name).collect(Collectors.joining(", "))
                + ".";
    return "%s at %s: %s.%s"
        .formatted(total(score), times.of(picture.asOf(), now), values, missing);
  }

  /** A partial set is never one number. */
  private static String total(Score score) {
    var low = score.low().toPlainString();
    return score.complete()
        ? score.title() + " " + low
        : "%s %s to %s (incomplete)".formatted(score.title(), low, score.high().toPlainString());
  }

  private String value(ScoredInput input) {
    var points = input.points() == 1 ? "1 point" : input.points() + " points";
    return name(input.code())
        + " "
        + input.value().plain()
        + Plain.unit(input.unit())
        + (input.points() == 0 ? "" : " (" + points + ")");
  }

  private String background(Facts facts) {
    var lines = new ArrayList<String>();
    lines.add("Admitted " + admitted(facts.page().encounter(), facts.now()) + ".");
    var plan = facts.page().carePlan();
    lines.addAll(plan == null ? List.of("Standard settings; no care plan.") : plan(plan, facts));
    var newest = facts.page().newest();
    if (newest != null && !newest.changed().isEmpty()) {
      lines.add(
          "Changed: "
              + newest.changed().stream()
                  .map(ChangedFinding::words)
                  .collect(Collectors.joining("; "))
              + ".");
    }
    facts.story().stream().filter(Isbar::byPerson).map(it -> done(it, facts)).forEach(lines::add);
    var call = facts.call();
    if (call != null) {
      call.treatments().stream()
          .map(
              given ->
                  "%s %s%s."
                      .formatted(
                          times.of(given.at(), facts.now()),
                          given.kind().word(),
                          given.note() == null ? "" : ": " + given.note()))
          .forEach(lines::add);
    }
    return String.join("\n", lines);
  }

  private String admitted(Encounter encounter, Instant now) {
    return times.of(encounter.admitted(), now);
  }

  private List<String> plan(CarePlan plan, Facts facts) {
    var lines = new ArrayList<String>();
    var standing = plan.standingAt(facts.now());
    if (standing.ceiling() != null) {
      lines.add("Ceiling of care: " + standing.ceiling() + ".");
    }
    if (standing.oxygenScale() == 2) {
      lines.add("Oxygen scale 2 is prescribed.");
    }
    if (!standing.populations().isEmpty()) {
      lines.add("Scored as: " + String.join(", ", standing.populations()) + ".");
    }
    if (standing.usualConsciousness() != null) {
      lines.add("Usually " + standing.usualConsciousness() + ".");
    }
    if (!plan.inForce(facts.now())) {
      return lines;
    }
    for (var limit : plan.limits()) {
      lines.add("Altered limit: " + name(limit.code()) + " " + range(limit) + ".");
    }
    if (plan.hold() != null) {
      lines.add(
          "Escalation held until %s: %s."
              .formatted(times.of(plan.hold().until(), facts.now()), plan.hold().reason()));
    }
    lines.add("Care plan until " + times.of(plan.until(), facts.now()) + ": " + plan.reason());
    return lines;
  }

  private static String range(Limit limit) {
    return (limit.low() == null ? "" : "from " + limit.low().toPlainString() + " ")
        + (limit.high() == null ? "" : "to " + limit.high().toPlainString());
  }

  private static boolean byPerson(EpisodeChange change) {
    return !change.by().equals("driftward");
  }

  private String done(EpisodeChange change, Facts facts) {
    var note = change.note() == null ? "" : ": " + change.note();
    return "%s %s by %s%s."
        .formatted(
            times.of(change.at(), facts.now()), change.kind().replace('-', ' '), change.by(), note);
  }

  private String recommendation(Facts facts) {
    var episode = facts.episode();
    var lines = new ArrayList<String>();
    if (episode != null) {
      var response = policy.ladder().of(episode.level());
      lines.add(
          "somebody at the bedside within %s of the alarm, a complete set within %s after that"
              .formatted(Plain.time(response.attend()), Plain.time(response.reassess())));
      if (episode.due() != null && episode.awaiting() != null) {
        lines.add(
            "%s is due by %s"
                .formatted(
                    episode.awaiting().word().replace('-', ' '),
                    times.of(episode.due(), facts.now())));
      }
    }
    next(facts.page().newest(), facts.now(), lines);
    return lines.isEmpty()
        ? HandoverText.DRAFT + "as before."
        : HandoverText.DRAFT + String.join("; ", lines) + ".";
  }

  private void next(@Nullable Snapshot newest, Instant now, List<String> lines) {
    if (newest != null && newest.nextDue() != null) {
      var word = newest.overdue(now) ? "the next set was due at " : "the next set is due at ";
      lines.add(word + times.of(newest.nextDue(), now));
    }
  }

  private String name(String code) {
    return catalogue
        .find(code)
        .map(CatalogueEntry::name)
        .orElseGet(() -> code.replace('-', ' '))
        .toLowerCase(Locale.ROOT);
  }
}
