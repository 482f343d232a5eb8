package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Objects;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Move.Refused;
import org.driftward.alerts.core.episode.Move.To;
import org.jspecify.annotations.Nullable;

/**
 * The states of an episode, one method for each event; nothing else moves an episode. Below stands
 * what holds in general, in each state what is particular to it. Tabulated in {@code
 * docs/episodes.md}.
 */
enum Stage {
  /** Nobody has answered the present alarm; the ladder climbs. */
  OPEN {
    @Override
    Move acknowledge(Standing now, Turn turn) {
      return acknowledged(now, turn);
    }

    @Override
    Move handOver(Standing now, Owner to) {
      return now.owner() == null
          ? new Refused("nobody has answered yet; acknowledge it first")
          : super.handOver(now, to);
    }

    @Override
    Move close(Standing now, Turn turn) {
      return new Refused("nobody has answered yet; acknowledge or attend first");
    }

    @Override
    Move clockRanOut(Standing now, Turn turn) {
      return climbed(now, null, turn);
    }

    /** It stays on its rung, due no later than before. */
    @Override
    Move abandoned(Standing now, Turn turn) {
      return now.owner() == null
          ? super.abandoned(now, turn)
          : new To(
              alarm(Standing.open(null, now.rung(), due(now), now.since()), turn), "owner-left");
    }

    @Override
    Standing alarm(Standing now, Turn turn) {
      int rung = turn.response().capped(now.rung());
      var due = turn.acknowledgeBy(rung);
      boolean sooner = now.due() != null && now.due().isBefore(due);
      return Standing.open(now.owner(), rung, sooner ? now.due() : due, now.since());
    }
  },

  /** Somebody owns it and is expected at the bedside. */
  ACKNOWLEDGED {
    @Override
    Move acknowledge(Standing now, Turn turn) {
      return new Refused(whose(now) + " has answered already");
    }

    @Override
    Move clockRanOut(Standing now, Turn turn) {
      return climbed(now, null, turn);
    }
  },

  /** Somebody is or was at the bedside; the next complete set is expected. */
  ATTENDED {
    @Override
    Move acknowledge(Standing now, Turn turn) {
      return new Refused(whose(now) + " is at the bedside already");
    }

    @Override
    Move attend(Standing now, Turn turn) {
      return turn.by().equals(now.owner())
          ? new Refused("recorded already")
          : super.attend(now, turn);
    }

    @Override
    Move clockRanOut(Standing now, Turn turn) {
      return new To(reopened(null, turn), "reopened");
    }
  },

  /** Rests with a reason, a signature and an end. */
  HELD {
    @Override
    Move acknowledge(Standing now, Turn turn) {
      return acknowledged(now, turn);
    }

    @Override
    Move clockRanOut(Standing now, Turn turn) {
      return new To(reopened(null, turn), "hold-ended");
    }

    /** What was signed still rests until its end, and calls nobody before. */
    @Override
    Move callUpon(Standing now, Owner heir, Turn turn) {
      return passOn(now, heir);
    }

    @Override
    Move transferred(Standing now, Turn turn) {
      return new To(now, TRANSFERRED);
    }
  },

  /** Over. Refuses everything. */
  CLOSED {
    @Override
    Move acknowledge(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move attend(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move handOver(Standing now, Owner to) {
      return over();
    }

    @Override
    Move hold(Standing now, Turn turn, Instant until) {
      return over();
    }

    @Override
    Move escalate(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move close(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move clockRanOut(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move passOn(Standing now, Owner heir) {
      return over();
    }

    @Override
    Move callUpon(Standing now, Owner heir, Turn turn) {
      return over();
    }

    @Override
    Move abandoned(Standing now, Turn turn) {
      return over();
    }

    @Override
    Move transferred(Standing now, Turn turn) {
      return over();
    }

    @Override
    Standing alarm(Standing now, Turn turn) {
      throw new IllegalStateException("an alarm for an episode that is over");
    }
  };

  private static final String PASSED_ON = "passed-on";
  private static final String TRANSFERRED = "transferred";

  static Stage of(Standing standing) {
    return valueOf(standing.state().name());
  }

  abstract Move acknowledge(Standing now, Turn turn);

  /** The owner is gone and somebody took over from them: theirs, on the same clock. */
  Move passOn(Standing now, Owner heir) {
    return now.owner() == null ? nobodys() : new To(now.ownedBy(heir), PASSED_ON);
  }

  /**
   * The owner is gone and somebody answers for the bed who has not asked for it: theirs, and they
   * are called.
   */
  Move callUpon(Standing now, Owner heir, Turn turn) {
    return now.owner() == null ? nobodys() : new To(alarm(now.ownedBy(heir), turn), PASSED_ON);
  }

  /** The owner is gone and nobody answers for the bed: the clock runs again. */
  Move abandoned(Standing now, Turn turn) {
    return now.owner() == null
        ? new Refused("nobody has it to leave")
        : new To(reopened(null, turn), "owner-left");
  }

  /** The patient has come to another ward, whose people have not been called so far. */
  Move transferred(Standing now, Turn turn) {
    return new To(alarm(now, turn), TRANSFERRED);
  }

  Move attend(Standing now, Turn turn) {
    var due = turn.reassessBy();
    return new To(
        new Standing(EpisodeState.ATTENDED, turn.by(), now.rung(), due, turn.now()), "attended");
  }

  Move handOver(Standing now, Owner to) {
    return now.owner() != null && now.owner().account().equals(to.account())
        ? new Refused("it is theirs already")
        : new To(now.ownedBy(to), "handed-over");
  }

  Move hold(Standing now, Turn turn, Instant until) {
    return new To(
        new Standing(EpisodeState.HELD, turn.by(), now.rung(), until, turn.now()), "held");
  }

  /** Whoever owns it stays responsible until the next rung answers. */
  Move escalate(Standing now, Turn turn) {
    return climbed(now, now.owner(), turn);
  }

  Move close(Standing now, Turn turn) {
    return new To(new Standing(EpisodeState.CLOSED, null, now.rung(), null, turn.now()), "closed");
  }

  abstract Move clockRanOut(Standing now, Turn turn);

  /** Something new or worse. Whoever answered stays responsible until somebody answers again. */
  Standing alarm(Standing now, Turn turn) {
    return reopened(now.owner(), turn);
  }

  private static Move acknowledged(Standing now, Turn turn) {
    var due = turn.attendBy(now.rung());
    return new To(
        new Standing(EpisodeState.ACKNOWLEDGED, turn.by(), now.rung(), due, turn.now()),
        "acknowledged");
  }

  private static Move climbed(Standing now, @Nullable Owner owner, Turn turn) {
    int rung = turn.response().capped(now.rung() + 1);
    return new To(Standing.open(owner, rung, turn.acknowledgeBy(rung), turn.now()), "escalated");
  }

  private static Standing reopened(@Nullable Owner owner, Turn turn) {
    return Standing.open(owner, 0, turn.acknowledgeBy(0), turn.now());
  }

  private static Instant due(Standing now) {
    return Objects.requireNonNull(now.due(), "due");
  }

  private static Move nobodys() {
    return new Refused("nobody has it to pass on");
  }

  private static Move over() {
    return new Refused("the episode is over");
  }

  private static String whose(Standing now) {
    return now.owner() == null ? "somebody" : now.owner().name();
  }
}
