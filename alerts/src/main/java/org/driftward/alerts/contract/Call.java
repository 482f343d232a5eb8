package org.driftward.alerts.contract;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * What a response team did for one episode. The fields follow the consensus on recording such calls
 * (Peberdy and others, 2007), as we know it from memory.
 *
 * @param version counts the entries from 1
 * @param firstTrigger clinical time of what opened the episode
 * @param triggers in words, as they stood when the call began
 * @param ceiling of care in force when the call began, or null
 * @param callsBefore of this encounter in the 24 hours before
 * @param caller who asked the team to come, or null while nobody wrote it down
 * @param moments in the order of their time; each step at most once
 * @param signs vital signs at the trigger, at arrival and at the end, as far as there are any
 * @param present roles at the bedside, in words
 * @param treatments in the order of their time
 * @param lead account of whoever leads it now, or null before the call was received
 * @param transfers from one leader to the next, oldest first
 * @param ending or null while it goes on
 */
public record Call(
    String episode,
    String encounter,
    String ward,
    @Nullable String bed,
    long version,
    Instant firstTrigger,
    List<String> triggers,
    @Nullable String ceiling,
    int callsBefore,
    @Nullable Caller caller,
    List<Moment> moments,
    List<Signs> signs,
    Set<String> present,
    List<Treatment> treatments,
    @Nullable String lead,
    @Nullable String leadName,
    List<Transfer> transfers,
    @Nullable Ending ending) {

  /** What somebody who calls the team is to the patient. */
  public enum CallerRole implements Word {
    NURSE,
    DOCTOR,
    OTHER_STAFF,
    PATIENT,
    FAMILY;

    /** Whether the call came from the patient's side. */
    public boolean patientSide() {
      return this == PATIENT || this == FAMILY;
    }
  }

  /**
   * Who asked the team to come.
   *
   * @param name of the person, or null
   */
  public record Caller(CallerRole role, @Nullable String name) {
    public Caller {
      Objects.requireNonNull(role, "role");
    }
  }

  /** The times that count. */
  public enum Step implements Word {
    CALLED,
    RECEIVED,
    AT_BEDSIDE,
    CRITICAL_INTERVENTION,
    INTENSIVE_CARE_DECISION,
    LEFT_WARD,
    FINISHED
  }

  /**
   * A step and when. A late entry keeps both times.
   *
   * @param at when it happened
   * @param enteredAt when it was recorded
   * @param by account of whoever recorded it
   */
  public record Moment(Step step, Instant at, Instant enteredAt, String by) {}

  /** When vital signs are read off the record. */
  public enum Point implements Word {
    TRIGGER,
    ARRIVAL,
    END
  }

  /**
   * The vital signs of the newest set at that point.
   *
   * @param asOf clinical time of the set
   * @param score in words, for example {@code NEWS2 7}
   */
  public record Signs(Point point, Instant asOf, String score, List<Sign> values) {
    public Signs {
      values = List.copyOf(values);
    }
  }

  /**
   * One vital sign with its points.
   *
   * @param number or null for a word
   * @param word or null for a number
   * @param unit UCUM, or null
   */
  public record Sign(
      String code,
      @Nullable BigDecimal number,
      @Nullable String word,
      @Nullable String unit,
      Instant takenAt,
      int points) {}

  public enum TreatmentKind implements Word {
    AIRWAY,
    OXYGEN,
    VENTILATION,
    FLUIDS,
    VASOPRESSOR,
    DRUG,
    TEST,
    RESUSCITATION,
    OTHER
  }

  public record Treatment(
      TreatmentKind kind, @Nullable String note, Instant at, Instant enteredAt, String by) {}

  /** From one team or shift to the next. */
  public record Transfer(String from, String to, String toName, String note, Instant at) {}

  /** Where it led. */
  public enum Disposition implements Word {
    STAYED_WITH_PLAN,
    HIGHER_CARE,
    THEATRE,
    DIED,
    LIMITATION_AGREED
  }

  /**
   * @param plan what is to be done, in words; required when the patient stays
   * @param recipient who has the patient now, or null
   * @param nextSet when the next set is due, or null
   */
  public record Ending(
      Disposition disposition,
      @Nullable String plan,
      @Nullable String recipient,
      @Nullable Instant nextSet) {}

  public Call {
    Objects.requireNonNull(episode, "episode");
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(firstTrigger, "firstTrigger");
    triggers = List.copyOf(triggers);
    moments = List.copyOf(moments);
    signs = List.copyOf(signs);
    present = Set.copyOf(present);
    treatments = List.copyOf(treatments);
    transfers = List.copyOf(transfers);
  }

  /**
   * Before its first entry.
   *
   * @param ceiling of care in force, or null
   * @param callsBefore of this encounter in the 24 hours before
   */
  public static Call notBegun(Episode episode, @Nullable String ceiling, int callsBefore) {
    return new Call(
        episode.id(),
        episode.encounter(),
        episode.ward(),
        episode.bed(),
        0,
        episode.openedAt(),
        episode.reasons().stream().map(Reason::words).toList(),
        ceiling,
        callsBefore,
        null,
        List.of(),
        List.of(),
        Set.of(),
        List.of(),
        null,
        null,
        List.of(),
        null);
  }

  public Optional<Moment> moment(Step step) {
    return moments.stream().filter(moment -> moment.step() == step).findFirst();
  }

  public boolean finished() {
    return ending != null;
  }

  @Override
  public String toString() {
    return "Call[" + episode + " version " + version + "]";
  }
}
