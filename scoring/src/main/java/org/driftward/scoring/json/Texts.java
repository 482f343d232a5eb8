package org.driftward.scoring.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.NumberOutput;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.time.Instant;
import org.driftward.ingest.contract.Recent;

/** Moments and numbers as JSON. */
final class Texts {

  private static final Recent<Instant, SerializedString> MOMENTS = new Recent<>(8);

  /** By ten times the number: what is measured on a ward, read to a tenth. */
  private static final SerializedString[] TENTHS = new SerializedString[4096];

  static {
    for (int i = 0; i < TENTHS.length; i++) {
      TENTHS[i] = Pieces.run(NumberOutput.toString(i / 10.0, true));
    }
  }

  private Texts() {}

  static SerializedString of(Instant moment) throws IOException {
    return MOMENTS.get(moment, one -> Pieces.run(Pieces.quoted(one.toString())));
  }

  /** What is no number becomes a string. */
  static void write(double number, JsonGenerator out) throws IOException {
    int tenths = (int) (number * 10);
    if (0 < tenths && tenths < TENTHS.length && tenths / 10.0 == number) {
      out.writeRaw(TENTHS[tenths]);
      return;
    }
    var text = NumberOutput.toString(number, true);
    out.writeRaw(Double.isFinite(number) ? text : Pieces.quoted(text));
  }
}
