package org.driftward.alerts.core.call;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Point;
import org.driftward.alerts.contract.Call.Signs;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.Transfer;
import org.driftward.alerts.contract.Call.Treatment;
import org.driftward.alerts.contract.CallDesk.Entry;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** From a call and an entry to the call after it. Pure; an entry that makes no sense is refused. */
public final class Calls {

  /** How long after the fact an entry may still be made. Engineering choice, no source. */
  private static final Duration LATEST = Duration.ofDays(7);

  private static final int LONGEST = 2000;
  private static final Set<String> SCRIBES =
      Set.of(AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE);

  private Calls() {}

  /** A field that is missing or makes no sense. */
  public record Fault(String field, String why) {}

  public static boolean mayRecord(Actor actor) {
    return !Collections.disjoint(actor.roles(), SCRIBES);
  }

  public static @Nullable Fault fault(Call call, Entry entry, Instant now) {
    if (entry instanceof Entry.Reached reached) {
      return reached.step() == Step.FINISHED
          ? new Fault("disposition", "says where the call led")
          : time(call, reached.at(), now);
    }
    if (entry instanceof Entry.CalledBy calledBy) {
      return tooLong(calledBy.caller().name())
          ? new Fault("caller", "longer than " + LONGEST + " characters")
          : null;
    }
    if (entry instanceof Entry.Treated treated) {
      return tooLong(treated.note())
          ? new Fault("note", "longer than " + LONGEST + " characters")
          : time(call, treated.at(), now);
    }
    if (entry instanceof Entry.HandedOver handedOver) {
      return handedOver.to().isBlank() ? new Fault("to", "names who takes over") : null;
    }
    return entry instanceof Entry.Finished finished ? ending(call, finished, now) : null;
  }

  /** An end that was recorded stands; other entries may still come late. */
  public static boolean isOver(Call call, Entry entry) {
    return call.finished()
        && (entry instanceof Entry.Finished || entry instanceof Entry.HandedOver);
  }

  public static Call after(Call call, Entry entry, Actor actor, Instant now) {
    var draft = new Draft(call);
    if (entry instanceof Entry.Reached reached) {
      draft.reached(new Moment(reached.step(), or(reached.at(), now), now, actor.account()));
      if (reached.step() == Step.RECEIVED || draft.lead == null) {
        draft.ledBy(actor.account(), actor.name());
      }
    } else if (entry instanceof Entry.CalledBy calledBy) {
      draft.caller = calledBy.caller();
    } else if (entry instanceof Entry.Present present) {
      draft.present = present.roles();
    } else if (entry instanceof Entry.Treated treated) {
      var at = or(treated.at(), now);
      draft.treatments.add(new Treatment(treated.kind(), treated.note(), at, now, actor.account()));
      draft.treatments.sort(Comparator.comparing(Treatment::at));
    } else if (entry instanceof Entry.HandedOver handed) {
      var name = handed.toName() == null ? handed.to() : handed.toName();
      draft.transfers.add(new Transfer(actor.account(), handed.to(), name, handed.note(), now));
      draft.ledBy(handed.to(), name);
    } else if (entry instanceof Entry.Finished finished) {
      draft.reached(new Moment(Step.FINISHED, or(finished.at(), now), now, actor.account()));
      draft.ending = finished.ending();
    }
    return draft.call();
  }

  /**
   * With the vital signs as the record has them, late and corrected sets included.
   *
   * @param pictures the newest picture of the patient not after a time
   */
  public static Call withSigns(Call call, Function<Instant, Optional<Snapshot>> pictures) {
    var signs = new ArrayList<Signs>();
    pictures
        .apply(call.firstTrigger())
        .map(it -> SignsAt.of(Point.TRIGGER, it))
        .ifPresent(signs::add);
    for (var moment : call.moments()) {
      var point =
          moment.step() == Step.AT_BEDSIDE
              ? Point.ARRIVAL
              : moment.step() == Step.FINISHED ? Point.END : null;
      if (point != null) {
        pictures.apply(moment.at()).map(it -> SignsAt.of(point, it)).ifPresent(signs::add);
      }
    }
    return new Draft(call).unchanged(signs);
  }

  private static @Nullable Fault ending(Call call, Entry.Finished finished, Instant now) {
    var ending = finished.ending();
    boolean stays =
        ending.disposition() == Disposition.STAYED_WITH_PLAN
            || ending.disposition() == Disposition.LIMITATION_AGREED;
    if (stays && (ending.plan() == null || ending.plan().isBlank())) {
      return new Fault("plan", "says what is to be done");
    }
    if (ending.disposition() == Disposition.STAYED_WITH_PLAN && ending.nextSet() == null) {
      return new Fault("nextSet", "says when the next set is due");
    }
    if (tooLong(ending.plan())) {
      return new Fault("plan", "longer than " + LONGEST + " characters");
    }
    var arrived = call.moment(Step.AT_BEDSIDE).map(Moment::at);
    var at = or(finished.at(), now);
    return arrived.filter(at::isBefore).isPresent()
        ? new Fault("at", "lies before the arrival at the bedside")
        : time(call, finished.at(), now);
  }

  private static @Nullable Fault time(Call call, @Nullable Instant at, Instant now) {
    if (at == null) {
      return null;
    }
    if (at.isAfter(now)) {
      return new Fault("at", "lies in the future");
    }
    if (at.isBefore(now.minus(LATEST))) {
      return new Fault("at", "is more than " + LATEST.toDays() + " days ago");
    }
    return at.isBefore(call.firstTrigger().minus(Duration.ofDays(1)))
        ? new Fault("at", "lies more than a day before the first trigger")
        : null;
  }

  private static Instant or(@Nullable Instant at, Instant now) {
    return at == null ? now : at;
  }

  private static boolean tooLong(@Nullable String text) {
    return text != null && text.length() > LONGEST;
  }
}
