package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.core.narrative.Sentence.Item;

/**
 * Which parts of a sentence say nothing about the patient now: the past, conditions, targets,
 * plans, other people, hedges, questions.
 */
final class Scopes {

  private static final Set<Cue> TO_THE_END = EnumSet.of(Cue.CONDITION, Cue.PLAN, Cue.OTHER_PERSON);

  private Scopes() {}

  /** What an item stands in. */
  enum Scope {
    SAID,
    HEDGED,
    ASKED,
    DROPPED
  }

  static List<Scope> of(Sentence sentence) {
    var items = sentence.items();
    var scopes = new ArrayList<Scope>();
    Cue lasting = null;
    boolean asking = false;
    int begin = 0;
    while (begin < items.size()) {
      int end = clauseEnd(items, begin);
      var clause = items.subList(begin, end);
      boolean hedged = clause.stream().anyMatch(i -> i.is(Cue.HEDGE));
      boolean past = clause.stream().anyMatch(i -> i.is(Cue.PAST));
      boolean empty = clause.stream().noneMatch(i -> i.mention() != null && i.mention().content());
      boolean valued = false;
      Scope scopeOfNow = null;
      if (hedged && empty) {
        hedge(scopes, items, begin);
      }
      for (var item : clause) {
        if (item.is(Cue.NOW)) {
          lasting = lasting == Cue.PAST || lasting == Cue.PLAN ? null : lasting;
        }
        if (item.is(Cue.PATIENT) && lasting == Cue.OTHER_PERSON) {
          lasting = null;
        }
        if (item.is(Cue.TURN) && lasting != Cue.CONDITION) {
          lasting = null;
        }
        if (item.is(Cue.QUESTION)) {
          asking = true;
        }
        if (ends(item)) {
          asking = false;
        }
        if (item.is(Cue.TARGET)) {
          scopeOfNow = Scope.DROPPED;
        }
        for (var cue : TO_THE_END) {
          if (item.is(cue)) {
            lasting = lasting == Cue.CONDITION ? lasting : cue;
          }
        }
        if (item.is(Cue.PAST) && !valued) {
          lasting = lasting == null ? Cue.PAST : lasting;
        }
        valued |= item.mention() != null && item.mention().valued();
        Scope scope;
        if (lasting != null || scopeOfNow != null || past) {
          scope = Scope.DROPPED;
        } else if (hedged) {
          scope = Scope.HEDGED;
        } else {
          scope = asking || sentence.question() ? Scope.ASKED : Scope.SAID;
        }
        scopes.add(scope);
      }
      begin = end;
    }
    return scopes;
  }

  /** "Crackles on the left, I think": the clause before is meant. */
  private static void hedge(List<Scope> scopes, List<Item> items, int begin) {
    for (int i = begin - 1; i >= 0; i--) {
      if (items.get(i).comma() && i < begin - 1) {
        return;
      }
      if (scopes.get(i) == Scope.SAID) {
        scopes.set(i, Scope.HEDGED);
      }
    }
  }

  private static boolean ends(Item item) {
    return item.comma() || item.is(Cue.ANSWER_NO) || item.is(Cue.ANSWER_YES) || item.is(Cue.PRAISE);
  }

  /** A clause ends at a comma, a turn, "now", or where another finding is named after a value. */
  private static int clauseEnd(List<Item> items, int begin) {
    boolean valued = false;
    for (int i = begin; i < items.size(); i++) {
      var item = items.get(i);
      if (i > begin && (item.is(Cue.TURN) || item.is(Cue.NOW))) {
        return i;
      }
      if (item.comma()) {
        return i + 1;
      }
      if (item.mention() != null) {
        if (valued && !item.mention().meaning().named.isEmpty()) {
          return i;
        }
        valued |= item.mention().valued();
      }
    }
    return items.size();
  }
}
