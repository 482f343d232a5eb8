package org.driftward.ingest.core.narrative;

import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Narrative;
import org.driftward.ingest.contract.NarrativeReader;
import org.driftward.ingest.core.UnitConversion;

/** Reads narratives by the words of a catalogue. Immutable, thread-safe. */
public final class NarrativeEngine implements NarrativeReader {

  private final Vocabulary vocabulary;
  private final Measure measure;

  /**
   * @throws IllegalArgumentException if the words do not fit the catalogue
   */
  public NarrativeEngine(
      Catalogue catalogue, List<Wording> words, Grammar grammar, UnitConversion conversion) {
    this.vocabulary = new Vocabulary(catalogue, words, grammar);
    this.measure = new Measure(conversion);
  }

  @Override
  public Narrative read(String text) {
    if (text.length() > Narrative.LONGEST) {
      throw new IllegalArgumentException("a text of " + text.length() + " code units");
    }
    var line = vocabulary.line(text);
    var ledger = new Ledger(line);
    var assembler = new Assembler(vocabulary, measure, line, ledger);
    var mentions = new Scanner(vocabulary).mentions(line);
    Sentence.of(line, mentions).forEach(assembler::read);
    return ledger.narrative();
  }
}
