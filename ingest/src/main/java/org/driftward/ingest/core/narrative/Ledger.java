package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.Narrative.Certainty;
import org.driftward.ingest.contract.Narrative.Heard;
import org.driftward.ingest.contract.Narrative.Question;
import org.driftward.ingest.contract.Narrative.Span;
import org.driftward.ingest.contract.Narrative.Why;
import org.jspecify.annotations.Nullable;

/** What was heard so far: of each key the last. */
final class Ledger {

  private static final FindingKey SYSTOLIC = FindingKey.of("systolic-pressure");
  private static final FindingKey DIASTOLIC = FindingKey.of("diastolic-pressure");

  private static final FindingKey OUTPUT = FindingKey.of("urine-output");
  private static final FindingKey PERIOD = FindingKey.of("urine-output-period");

  private final Line line;
  private final Map<FindingKey, Heard> heard = new LinkedHashMap<>();
  private final List<Question> questions = new ArrayList<>();
  private final Map<Integer, Mention> clinical = new LinkedHashMap<>();
  private final BitSet used = new BitSet();

  Ledger(Line line) {
    this.line = line;
  }

  void clinical(Mention mention) {
    clinical.put(mention.first(), mention);
  }

  void used(Mention mention) {
    used.set(mention.first());
  }

  void hear(Finding finding, Mention mention, boolean implied) {
    used(mention);
    heard.remove(finding.key());
    heard.put(
        finding.key(),
        new Heard(finding, span(mention), implied ? Certainty.IMPLIED : Certainty.SAID));
  }

  void forget(Mention mention) {
    heard.values().removeIf(known -> known.span().equals(span(mention)));
  }

  void ask(Mention mention, Why why, @Nullable String code, List<Finding> offers) {
    used(mention);
    var span = span(mention);
    if (questions.stream().noneMatch(known -> known.span().equals(span))) {
      questions.add(new Question(span, why, code, offers));
    }
  }

  Narrative narrative() {
    refusePair();
    if (!heard.containsKey(OUTPUT)) {
      heard.remove(PERIOD);
    }
    var findings = new ArrayList<>(heard.values());
    findings.sort(Comparator.comparingInt(known -> known.span().from()));
    questions.sort(Comparator.comparingInt(known -> known.span().from()));
    var unread =
        clinical.values().stream()
            .filter(mention -> !used.get(mention.first()))
            .map(this::span)
            .sorted(Comparator.comparingInt(Span::from))
            .toList();
    return new Narrative(findings, questions, unread);
  }

  /** Never mended: which of the two was meant, nobody knows. */
  private void refusePair() {
    var systolic = heard.get(SYSTOLIC);
    var diastolic = heard.get(DIASTOLIC);
    if (systolic == null
        || diastolic == null
        || number(systolic).compareTo(number(diastolic)) > 0) {
      return;
    }
    heard.remove(SYSTOLIC);
    heard.remove(DIASTOLIC);
    questions.add(new Question(diastolic.span(), Why.IMPOSSIBLE_PAIR, SYSTOLIC.code(), List.of()));
  }

  private static BigDecimal number(Heard heard) {
    return ((Quantity) heard.finding().value()).value();
  }

  private Span span(Mention mention) {
    return new Span(line.token(mention.first()).from(), line.token(mention.end() - 1).to());
  }
}
