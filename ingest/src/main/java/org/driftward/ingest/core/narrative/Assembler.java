package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Narrative.Why;
import org.driftward.ingest.core.narrative.Meaning.Option;
import org.driftward.ingest.core.narrative.Scopes.Scope;
import org.driftward.ingest.core.narrative.Sentence.Item;
import org.driftward.ingest.core.narrative.Statement.Topic;
import org.driftward.ingest.core.narrative.Statement.Valued;
import org.jspecify.annotations.Nullable;

/** Goes through a text once and puts findings, places and values together to statements. */
final class Assembler {

  /** Tokens that may stand between a finding and its number. */
  private static final int REACH = 8;

  /** Regions whose findings are spoken of place by place. */
  private static final Set<String> NEIGHBOURS = Set.of("chest", "limbs", "pulses");

  private static final Set<String> CURRENT =
      Set.of("it's", "he's", "she's", "is", "now", "at", "to");

  private final Vocabulary words;
  private final Measure measure;
  private final Line line;
  private final Ledger ledger;

  private Statement now = new Statement();
  private final List<Topic> recent = new ArrayList<>();
  private List<Topic> lastSentence = List.of();
  private Set<String> section = Set.of();
  private boolean negating;
  private int negationEnd;
  private boolean comma;
  private boolean denying;
  private boolean correcting;
  private boolean asked;
  private boolean placeBefore;
  private boolean topicBefore;

  Assembler(Vocabulary words, Measure measure, Line line, Ledger ledger) {
    this.words = words;
    this.measure = measure;
    this.line = line;
    this.ledger = ledger;
  }

  void read(Sentence sentence) {
    var scopes = Scopes.of(sentence);
    var items = sentence.items();
    recent.clear();
    negating = false;
    for (int i = 0; i < items.size(); i++) {
      var item = items.get(i);
      if (item.mention() == null) {
        negating &= item.comma() && topicBefore;
        topicBefore &= negating;
        comma |= item.comma();
        placeBefore &= now.values.isEmpty();
      } else {
        take(items, i, scopes.get(i));
      }
    }
    negating = false;
    correcting = false;
    flush(false);
    now.before = null;
    if (!recent.isEmpty()) {
      lastSentence = List.copyOf(recent);
    }
    asked &= sentence.question() || !recent.isEmpty();
  }

  private void take(List<Item> items, int i, Scope scope) {
    var m = items.get(i).mention();
    if (m.content() && !m.meaning().place()) {
      ledger.clinical(m);
    }
    if (!m.meaning().section.isEmpty()
        && i + 1 < items.size()
        && items.get(i + 1).mention() == null
        && !items.get(i + 1).comma()) {
      flush(false);
      section = m.meaning().section;
    }
    if (scope == Scope.DROPPED && ofOthers(m)) {
      m.meaning().options.forEach(o -> hear(FindingKey.of(o.code()), o.value(), m, false));
      return;
    }
    if (scope == Scope.DROPPED || scope == Scope.HEDGED) {
      flush(false);
      if (m.meaning().topic()) {
        recent.add(new Topic(m, m.meaning().topics(), false));
      }
      if (scope == Scope.HEDGED && m.valued()) {
        ledger.ask(m, Why.NO_EXACT_VALUE, null, List.of());
      }
      return;
    }
    if (m.amount() != null) {
      if (i > 0 && items.get(i - 1).is(Cue.NUMBERED)) {
        return;
      }
      number(items, i, i > 0 && items.get(i - 1).is(Cue.LIMIT), scope);
    } else if (!m.meaning().numbers.isEmpty()) {
      together(m);
    } else {
      phrase(items, i, scope);
    }
    placeBefore = m.meaning().place() || (placeBefore && joins(m));
    topicBefore = m.meaning().topic() || (topicBefore && joins(m));
  }

  private boolean ofOthers(Mention m) {
    var options = m.meaning().options;
    return !options.isEmpty()
        && options.stream().allMatch(o -> o.alone() && words.wording(o.code()).others());
  }

  private static boolean joins(Mention m) {
    return m.is(Cue.AND) || m.is(Cue.OR);
  }

  private void phrase(List<Item> items, int i, Scope scope) {
    var m = items.get(i).mention();
    var meaning = m.meaning();
    if (m.is(Cue.VOID)) {
      now = new Statement();
    }
    if (m.is(Cue.CORRECTION)) {
      correcting = true;
    }
    if (m.is(Cue.NEGATION) || m.is(Cue.NOT)) {
      negate(items, i);
      return;
    }
    if (m.is(Cue.NO_DENIAL)) {
      negating = false;
    }
    if (m.is(Cue.TURN)) {
      negating = false;
    }
    if (m.is(Cue.EVERYWHERE)) {
      now.everywhere = true;
    }
    if (m.is(Cue.THERE) && now.before != null && now.places.isEmpty()) {
      now.places.addAll(now.before.places);
    }
    if (m.is(Cue.DENIAL) && scope == Scope.SAID) {
      deny(m);
    }
    if (m.is(Cue.PRAISE) || m.is(Cue.ANSWER_YES)) {
      affirm(m);
    }
    boolean spoken = scope == Scope.SAID;
    boolean place = meaning.place() && place(items, i);
    if (!meaning.options.isEmpty() && spoken && option(items, i)) {
      if (m.equals(now.expected) && meaning.topic()) {
        topic(items, i, scope);
      }
      return;
    }
    if (meaning.topic() && !(place && meaning.named.isEmpty() && meaning.asked.isEmpty())) {
      topic(items, i, scope);
    }
  }

  private void negate(List<Item> items, int i) {
    var m = items.get(i).mention();
    boolean first =
        i == 0 || items.get(i - 1).mention() == null || items.get(i - 1).is(Cue.PATIENT);
    var next = i + 1 < items.size() ? items.get(i + 1) : null;
    boolean alone =
        next == null
            || next.mention() == null
            || next.is(Cue.PATIENT)
            || next.is(Cue.SUBJECT)
            || next.is(Cue.QUESTION)
            || next.is(Cue.ANSWER_NO);
    if (asked && m.is(Cue.ANSWER_NO) && alone) {
      deny(m);
      asked = false;
    } else if (m.is(Cue.ANSWER_NO)
        && ((next != null && next.is(Cue.CORRECTION))
            || (first && i > 0 && alone)
            || (first && i > 0 && next != null && next.mention().meaning().place()))) {
      correcting = true;
    } else {
      negating = true;
      negationEnd = m.end();
      topicBefore = false;
      denying = line.token(m.first()).text().startsWith("den");
    }
  }

  // --- topics

  private void topic(List<Item> items, int i, Scope scope) {
    var m = items.get(i).mention();
    var codes = m.meaning().topics();
    boolean denied = negating && near(items, i) && listed(items, i);
    if (negating && !denied) {
      negating = false;
    }
    var last = now.topics.isEmpty() ? null : now.topics.get(now.topics.size() - 1);
    boolean joined = topicBefore && i > 0;
    boolean after =
        now.values.entrySet().stream()
            .anyMatch(
                e ->
                    m.meaning().topics().contains(e.getKey())
                        && e.getValue().mention().end() == m.first());
    if (after) {
      now.topics.clear();
      now.carried = false;
    } else if (!now.values.isEmpty() || (now.carried && !now.topics.isEmpty())) {
      var places = now.values.isEmpty() ? List.copyOf(now.places) : List.<Place>of();
      if (now.values.isEmpty()) {
        now.topics.clear();
        now.carried = false;
      } else {
        flush(false);
        now.places.addAll(places);
      }
    } else if (last != null && last.denied() != denied) {
      flush(false);
    } else if (last != null && !joined && meet(last.codes(), codes).isEmpty()) {
      flush(false);
    } else if (last != null && !denied && !last.denied() && !meet(last.codes(), codes).isEmpty()) {
      var common = meet(last.codes(), codes);
      codes = common;
      if (joined && !m.meaning().named.isEmpty() && !last.mention().meaning().place()) {
        codes = m.meaning().topics();
      }
    }
    if (codes.size() > 1) {
      for (int r = recent.size() - 1; r >= 0; r--) {
        var common = meet(codes, recent.get(r).codes());
        if (!common.isEmpty() && m.meaning().named.size() != 1) {
          codes = common;
          break;
        }
      }
    }
    var topic = new Topic(m, codes, denied);
    now.topics.add(topic);
    recent.add(topic);
    asked = scope == Scope.ASKED || !m.meaning().asked.isEmpty();
    if ((!m.meaning().sites.isEmpty() && now.places.isEmpty() && !m.meaning().named.isEmpty())
        || (!m.meaning().asked.isEmpty() && m.meaning().place() && now.places.isEmpty())) {
      now.places.add(placeOf(m));
    }
    for (var waiting : m.equals(now.expected) ? List.copyOf(now.waiting) : List.<Mention>of()) {
      if (waiting.amount() != null) {
        quantity(waiting, topic, false);
      } else {
        chosen(waiting, topic, false).forEach(o -> put(o, waiting, false));
      }
    }
    now.waiting.clear();
  }

  /** Within reach of the negation, or an item of its list. */
  private boolean near(List<Item> items, int i) {
    int at = items.get(i).mention().first();
    for (int back = i - 1; back >= 0 && back >= i - 2; back--) {
      var m = items.get(back).mention();
      if (m != null && (m.is(Cue.NEGATION) || m.is(Cue.NOT))) {
        return at - m.end() <= 3;
      }
    }
    return topicBefore;
  }

  /** After a comma only where the list is closed by "or", or the word denies whole lists. */
  private boolean listed(List<Item> items, int i) {
    if (i == 0 || items.get(i - 1).mention() != null) {
      return true;
    }
    if (denying) {
      return true;
    }
    for (int k = i + 1; k < items.size(); k++) {
      if (items.get(k).is(Cue.OR)) {
        return true;
      }
      var m = items.get(k).mention();
      if ((m != null && !m.meaning().topic()) || (m == null && !items.get(k).comma())) {
        return false;
      }
    }
    return false;
  }

  // --- places

  private Place placeOf(Mention m) {
    boolean both = m.meaning().sides.size() == 2;
    return new Place(m.meaning().sites, m.meaning().sides, both || m.plural());
  }

  /** False where the words cannot be a place of what is spoken of. */
  private boolean place(List<Item> items, int i) {
    var m = items.get(i).mention();
    var meaning = m.meaning();
    if (!meaning.aspects.isEmpty()) {
      if (!now.values.isEmpty() && !now.aspects.isEmpty()) {
        flush(true);
      }
      now.aspects.addAll(meaning.aspects);
      return true;
    }
    boolean sideOnly = meaning.sites.isEmpty();
    if (correcting) {
      now.places.clear();
      var known = now.values.isEmpty() ? null : now;
      if (known == null && now.before != null && now.topics.isEmpty()) {
        reopen();
      }
      correcting = false;
    }
    boolean valued = !now.values.isEmpty();
    var next = i + 1 < items.size() ? items.get(i + 1).mention() : null;
    boolean belongsToNext =
        sideOnly
            && next != null
            && next.first() == m.end()
            && (!next.meaning().named.isEmpty()
                || !next.meaning().sites.isEmpty()
                || !next.meaning().about.isEmpty());
    boolean fits =
        now.values.keySet().stream()
            .map(words::entry)
            .anyMatch(e -> sideOnly ? e.sided() : Spread.fits(e, placeOf(m)));
    if (valued && !placeBefore) {
      boolean lacking = now.places.stream().allMatch(p -> p.sides().isEmpty());
      boolean full = now.placed() && !(sideOnly && lacking && !belongsToNext);
      if (!fits
          || full
          || (belongsToNext && now.placed())
          || (belongsToNext
              && !next.meaning().sites.isEmpty()
              && now.values.keySet().stream()
                  .noneMatch(c -> Spread.fits(words.entry(c), placeOf(next))))
          || (belongsToNext && next.meaning().sites.isEmpty())) {
        flush(true);
      }
    }
    boolean takes =
        sideOnly
            || now.topics.stream()
                .flatMap(t -> t.codes().stream())
                .anyMatch(c -> Spread.fits(words.entry(c), placeOf(m)));
    now.places.add(placeOf(m));
    if (!takes && meaning.named.isEmpty() && !meaning.about.isEmpty()) {
      var here = List.copyOf(now.places);
      topic(items, i, Scope.SAID);
      if (now.places.isEmpty()) {
        now.places.addAll(here.subList(Math.max(0, here.size() - 2), here.size()));
      }
    }
    return true;
  }

  private void reopen() {
    var before = now.before;
    var places = List.copyOf(now.places);
    before.values.values().forEach(v -> ledger.forget(v.mention()));
    now = new Statement();
    now.topics.addAll(before.topics);
    now.values.putAll(before.values);
    now.places.addAll(places);
    now.before = before.before;
  }

  // --- values

  /** Whether the words were understood as a value. */
  private boolean option(List<Item> items, int i) {
    var m = items.get(i).mention();
    if (negating && !topicBefore) {
      boolean denied = m.first() - negationEnd <= 2;
      negating &= denied && !m.meaning().named.isEmpty();
      if (denied) {
        return m.meaning().named.isEmpty();
      }
    }
    List<Option> own = List.of();
    Topic of = null;
    for (int t = now.topics.size() - 1; t >= 0 && own.isEmpty(); t--) {
      of = now.topics.get(t);
      own = chosen(m, of, false);
    }
    var alone = m.meaning().options.stream().filter(Option::alone).toList();
    boolean taken = !own.isEmpty() && own.stream().anyMatch(o -> now.values.containsKey(o.code()));
    var ahead = ahead(items, i);
    if ((own.isEmpty() || taken || now.carried)
        && alone.isEmpty()
        && ahead != null
        && !chosen(m, new Topic(ahead, ahead.meaning().topics(), false), false).isEmpty()) {
      if (!now.values.isEmpty() || !now.topics.isEmpty()) {
        var places =
            now.values.isEmpty() || now.carried ? List.copyOf(now.places) : List.<Place>of();
        flush(false);
        now.places.addAll(places);
      }
      now.waiting.add(m);
      now.expected = ahead;
      return true;
    }
    boolean implied = now.carried;
    if (own.isEmpty() && !alone.isEmpty()) {
      return alone(m, alone);
    }
    for (int r = recent.size() - 1; r >= 0 && own.isEmpty(); r--) {
      own = chosen(m, recent.get(r), true);
      implied = true;
    }
    if (own.isEmpty() && recent.isEmpty()) {
      for (int r = lastSentence.size() - 1; r >= 0 && own.isEmpty(); r--) {
        own = chosen(m, lastSentence.get(r), true);
      }
    }
    if (own.isEmpty() && !section.isEmpty()) {
      own = chosen(m, new Topic(m, section, false), true);
      own = own.size() == 1 ? own : List.of();
    }
    if (own.isEmpty()) {
      return !m.meaning().topic();
    }
    for (var o : own) {
      put(o, m, implied);
    }
    // Where several findings were named in one breath, the value is of all of them.
    if (of != null && now.topics.size() > 1 && now.topics.contains(of)) {
      for (var topic : now.topics) {
        if (!topic.equals(of) && !topic.denied()) {
          chosen(m, topic, false).stream()
              .filter(o -> !now.values.containsKey(o.code()))
              .forEach(o -> put(o, m, false));
        }
      }
    }
    return true;
  }

  private boolean alone(Mention m, List<Option> alone) {
    boolean placed =
        alone.stream()
            .map(o -> words.entry(o.code()))
            .anyMatch(e -> e.sided() || !e.sites().isEmpty());
    var codes = new LinkedHashSet<String>();
    alone.forEach(o -> codes.add(o.code()));
    if (placed) {
      var places = now.values.isEmpty() ? List.copyOf(now.places) : List.<Place>of();
      flush(false);
      now.places.addAll(places);
      now.topics.add(new Topic(m, codes, false));
      if (!m.meaning().sites.isEmpty() && now.places.isEmpty()) {
        now.places.add(placeOf(m));
      }
      alone.forEach(o -> put(o, m, false));
    } else {
      for (var o : alone) {
        hear(FindingKey.of(o.code()), o.value(), m, false);
      }
    }
    recent.add(new Topic(m, codes, false));
    return true;
  }

  /** The options of a phrase that belong to a topic. */
  private List<Option> chosen(Mention m, Topic topic, boolean strictly) {
    var named = topic.mention().meaning().named;
    var own =
        m.meaning().options.stream()
            .filter(o -> !o.general() && topic.codes().contains(o.code()))
            .toList();
    if (own.stream().anyMatch(o -> named.contains(o.code()))) {
      own = own.stream().filter(o -> named.contains(o.code())).toList();
    }
    if (!own.isEmpty()) {
      return own;
    }
    var general =
        m.meaning().options.stream()
            .filter(Option::general)
            .filter(o -> topic.codes().contains(o.code()))
            .filter(o -> named.contains(o.code()) || topic.codes().size() == 1)
            .toList();
    long codes = general.stream().map(Option::code).distinct().count();
    return codes == 1 && !strictly ? general.subList(0, 1) : List.of();
  }

  private @Nullable Mention ahead(List<Item> items, int i) {
    for (int k = i + 1; k < items.size() && k <= i + 4; k++) {
      var m = items.get(k).mention();
      if (m == null || m.is(Cue.NEGATION)) {
        return null;
      }
      if (m.meaning().topic() && (!m.meaning().named.isEmpty() || !m.meaning().place())) {
        return m;
      }
      if (m.amount() != null
          || (!m.meaning().options.isEmpty()
              && m.meaning().options.stream().anyMatch(Option::alone))) {
        return null;
      }
    }
    return null;
  }

  /** Whether a value says that nothing is wrong, and so means both of a pair. */
  private static boolean expected(CatalogueEntry entry, FindingValue value) {
    return value instanceof FindingValue.Grade grade
        ? entry.expected() != null && entry.expected().holds(BigDecimal.valueOf(grade.grade()))
        : entry.normal().contains(value.plain());
  }

  private void put(Option option, Mention m, boolean implied) {
    var entry = words.entry(option.code());
    put(option.code(), new Valued(option.value(), m, implied, expected(entry, option.value())));
  }

  private void put(String code, Valued valued) {
    var known = now.values.get(code);
    if (known != null) {
      if (correcting) {
        correcting = false;
      } else if (!known.mention().equals(valued.mention())) {
        flush(true);
      }
    } else if (correcting
        && now.before != null
        && now.before.values.containsKey(code)
        && now.values.isEmpty()) {
      reopen();
      correcting = false;
    }
    now.values.put(code, valued);
    ledger.used(valued.mention());
  }

  // --- numbers

  private void number(List<Item> items, int i, boolean limited, Scope scope) {
    var m = items.get(i).mention();
    var amount = m.amount();
    if (limited && !"h".equals(amount.unit())) {
      m =
          Mention.of(
              new Amount(
                  amount.number(),
                  amount.first(),
                  amount.end(),
                  amount.unit(),
                  amount.scale(),
                  false,
                  amount.plus()));
    }
    if (scope == Scope.ASKED) {
      return;
    }
    boolean near = false;
    for (int t = now.topics.size() - 1; t >= 0; t--) {
      var topic = now.topics.get(t);
      near |= !now.carried && m.first() - reach(topic) <= REACH;
      boolean placedOrScaled =
          now.placed()
              || !now.aspects.isEmpty()
              || amount.scale() != null
              || amount.plus()
              || amount.unit() != null;
      if (((near && !(taken(topic, m) && !placedOrScaled && !correcting))
              || placedOrScaled
              || correcting)
          && quantity(m, topic, now.carried)) {
        shareWithOthers(m, topic);
        return;
      }
    }
    var ahead = ahead(items, i);
    if (ahead != null && ahead.first() - m.end() <= 2) {
      var topic = new Topic(ahead, ahead.meaning().topics(), false);
      if (fitting(m, topic) != null) {
        if (!now.values.isEmpty() || !now.topics.isEmpty()) {
          var places = now.values.isEmpty() ? List.copyOf(now.places) : List.<Place>of();
          flush(false);
          now.places.addAll(places);
        }
        now.waiting.add(m);
        now.expected = ahead;
        return;
      }
    }
    boolean current =
        (m.first() > 0 && CURRENT.contains(line.token(m.first() - 1).text()))
            || line.is(m.end(), "now");
    boolean sure = amount.unit() != null || amount.scale() != null || amount.plus();
    var topics = new ArrayList<>(lastSentence);
    topics.addAll(recent);
    for (int r = topics.size() - 1;
        r >= 0 && (current || sure || (asked && recent.isEmpty()));
        r--) {
      var topic = topics.get(r);
      if (!topic.mention().meaning().named.isEmpty()
          || !topic.mention().meaning().asked.isEmpty()
          || (sure && r >= lastSentence.size())) {
        if (fitting(m, topic) != null) {
          if (!now.values.isEmpty()) {
            flush(false);
          }
          if (quantity(m, topic, true)) {
            return;
          }
        }
      }
    }
  }

  private int reach(Topic topic) {
    int at = topic.mention().end();
    for (var valued : now.values.values()) {
      at = Math.max(at, valued.mention().end());
    }
    return at;
  }

  private boolean taken(Topic topic, Mention m) {
    var code = fitting(m, topic);
    return code != null && now.values.containsKey(code);
  }

  private void shareWithOthers(Mention m, Topic of) {
    for (var topic : List.copyOf(now.topics)) {
      if (!topic.equals(of) && now.topics.contains(of)) {
        var code = fitting(m, topic);
        if (code != null
            && !now.values.containsKey(code)
            && words.entry(code).kind() == Kind.GRADE
            && !of.codes().contains(code)) {
          quantity(m, topic, false);
        }
      }
    }
  }

  /** The finding of a topic that a number can be of; null where there is none or not only one. */
  private @Nullable String fitting(Mention m, Topic topic) {
    var meaning = topic.mention().meaning();
    String found = null;
    for (var group : List.of(meet(topic.codes(), meaning.named), topic.codes())) {
      for (var code : group) {
        var fit = measure.of(words.entry(code), words.wording(code).unit(), m.amount());
        if (fit == null || elsewhere(words.entry(code))) {
          continue;
        }
        if (found == null || now.aspects.contains(code)) {
          found = code;
        }
      }
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  /** Whether a site was said at which the finding is not taken. */
  private boolean elsewhere(CatalogueEntry entry) {
    var sited = now.places.stream().filter(place -> !place.sites().isEmpty()).toList();
    return !entry.sites().isEmpty()
        && !sited.isEmpty()
        && sited.stream().noneMatch(place -> Spread.fits(entry, place));
  }

  private boolean quantity(Mention m, Topic topic, boolean implied) {
    var code = fitting(m, topic);
    if (code == null) {
      return false;
    }
    var entry = words.entry(code);
    var fit = measure.of(entry, words.wording(code).unit(), m.amount());
    if (fit.value() == null) {
      ledger.ask(
          m,
          m.amount().exact() ? Why.OUT_OF_RANGE : Why.NO_EXACT_VALUE,
          code,
          fit.offers().stream().map(v -> new Finding(FindingKey.of(code), v)).toList());
      return true;
    }
    var valued = new Valued(fit.value(), m, implied, false);
    put(code, valued);
    return true;
  }

  private void together(Mention m) {
    flush(false);
    var codes = m.meaning().numbers;
    for (int n = 0; n < codes.size() && n < m.numbers().size(); n++) {
      var entry = words.entry(codes.get(n));
      var number = m.numbers().get(n);
      var amount =
          new Amount(number, number.first(), number.end(), null, null, !number.doubtful(), false);
      var fit = measure.of(entry, false, amount);
      if (fit != null && fit.value() != null) {
        hear(FindingKey.of(entry.code()), fit.value(), m, false);
      } else {
        ledger.ask(m, Why.OUT_OF_RANGE, entry.code(), List.of());
      }
    }
    recent.add(new Topic(m, new LinkedHashSet<>(codes), false));
  }

  // --- answers

  private void deny(Mention m) {
    var topics = now.topics.isEmpty() ? asked ? lastSentence : List.<Topic>of() : now.topics;
    for (var topic : topics) {
      for (var code : namedOrAsked(topic)) {
        words
            .denied(code)
            .ifPresent(
                v -> put(code, new Valued(v, m, now.carried, expected(words.entry(code), v))));
      }
      if (asked && topics == lastSentence) {
        return;
      }
    }
  }

  private void affirm(Mention m) {
    var topics = now.topics.isEmpty() && asked ? lastSentence : now.topics;
    if (topics.isEmpty() || !now.values.isEmpty()) {
      return;
    }
    var topic = topics.get(topics.size() - 1);
    if (m.is(Cue.PRAISE)) {
      for (var code : topic.mention().meaning().asked) {
        words
            .entry(code)
            .usual()
            .filter(v -> words.entry(code).region().equals("general"))
            .ifPresent(v -> put(code, new Valued(v, m, false, true)));
      }
    }
    asked = false;
  }

  private Set<String> namedOrAsked(Topic topic) {
    var named = meet(topic.codes(), topic.mention().meaning().named);
    if (named.size() > 1) {
      var first = named.iterator().next();
      return words.wording(first).named().isEmpty() ? Set.of() : Set.of(first);
    }
    return named.isEmpty() ? meet(topic.codes(), topic.mention().meaning().asked) : named;
  }

  // --- statements

  private void flush(boolean carry) {
    var done = now;
    picked(done);
    boolean bare = done.values.isEmpty();
    if (!done.carried) {
      for (var topic : done.topics) {
        if (bare || topic.denied()) {
          byName(done, topic);
        }
      }
    }
    done.values.forEach((code, valued) -> emit(done, code, valued));
    now = new Statement();
    now.afterComma = comma;
    comma = false;
    if (done.places.isEmpty() && done.before != null) {
      done.places.addAll(done.before.places);
    }
    now.before = done.empty() ? done.before : done;
    if (done.values.isEmpty() && done.before != null && done.places.isEmpty()) {
      now.before = done.before;
    }
    if (carry) {
      now.topics.addAll(done.topics);
      now.carried = true;
    }
  }

  /** "Five on movement": the number is of the finding that the words pick. */
  private void picked(Statement done) {
    for (var aspect : done.aspects) {
      for (var topic : done.topics) {
        if (topic.codes().contains(aspect) && !done.values.containsKey(aspect)) {
          var kind = words.entry(aspect).kind();
          var other =
              done.values.keySet().stream()
                  .filter(c -> words.entry(c).kind() == kind && topic.codes().contains(c))
                  .filter(c -> kind == Kind.GRADE)
                  .findFirst();
          other.ifPresent(c -> done.values.put(aspect, done.values.remove(c)));
        }
      }
    }
  }

  private void byName(Statement done, Topic topic) {
    for (var code : namedOrAsked(topic)) {
      if (topic.denied()) {
        words
            .denied(code)
            .ifPresent(
                v ->
                    done.values.putIfAbsent(
                        code,
                        new Valued(v, topic.mention(), false, expected(words.entry(code), v))));
      } else if (words.wording(code).mentioned() != null
          && !asked
          && topic.mention().meaning().named.contains(code)) {
        done.values.put(
            code,
            new Valued(
                new FindingValue.Coded(words.wording(code).mentioned()),
                topic.mention(),
                false,
                false));
      }
    }
  }

  private void emit(Statement done, String code, Valued valued) {
    var entry = words.entry(code);
    done.topics.stream()
        .filter(t -> t.codes().contains(code))
        .forEach(t -> ledger.used(t.mention()));
    boolean plural =
        done.topics.stream()
                .anyMatch(
                    t ->
                        t.codes().contains(code)
                            && (t.mention().plural()
                                || (!t.mention().is(Cue.ONE_OF_PAIR) && valued.usual())))
            || (valued.usual() && done.topics.isEmpty());
    boolean everywhere =
        done.everywhere
            || (words.wording(code).everywhere()
                && (valued.usual()
                    || done.placed()
                    || (entry.region().equals("abdomen") && valued.mention().is(Cue.DENIAL))));
    var before =
        done.before != null && carriesOver(done, entry) ? done.before.places : List.<Place>of();
    for (var key : Spread.keys(entry, done.places, everywhere, plural, before)) {
      hear(key, valued.value(), valued.mention(), valued.implied());
    }
  }

  /** Places hold on for the same finding, within a clause, and for the sounds of the chest. */
  private static boolean carriesOver(Statement done, CatalogueEntry entry) {
    return !done.afterComma
        || done.before.values.containsKey(entry.code())
        || NEIGHBOURS.contains(entry.region());
  }

  private void hear(FindingKey key, FindingValue value, Mention m, boolean implied) {
    ledger.hear(new Finding(key, value), m, implied);
    var entry = words.entry(key.code());
    if (!entry.normal().contains(value.plain())) {
      words
          .wording(key.code())
          .implies()
          .forEach(
              (code, option) ->
                  ledger.hear(
                      new Finding(FindingKey.of(code), new FindingValue.Coded(option)), m, true));
    }
  }

  private static Set<String> meet(Set<String> one, Set<String> other) {
    var both = new LinkedHashSet<>(one);
    both.retainAll(other);
    return both;
  }
}
