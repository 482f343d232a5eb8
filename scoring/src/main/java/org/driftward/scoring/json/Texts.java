package org.driftward.scoring.json;

import com.fasterxml.jackson.core.io.NumberOutput;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.time.Instant;
import org.driftward.ingest.contract.Recent;

/** Moments and numbers as JSON. */
final class Texts {

  private static final Recent<Instant, SerializedString> MOMENTS = new Recent<>();
  private static final Recent<Double, SerializedString> NUMBERS = new Recent<>();

  private Texts() {}

  static SerializedString of(Instant moment) throws IOException {
    return MOMENTS.get(moment, one -> Pieces.run(Pieces.quoted(one.toString())));
  }

  /** What is no number becomes a string. */
  static SerializedString of(double number) throws IOException {
    return NUMBERS.get(number, Texts::number);
  }

  private static SerializedString number(double number) {
    var text = NumberOutput.toString(number, true);
    return Pieces.run(Double.isFinite(number) ? text : Pieces.quoted(text));
  }
}
