package org.driftward.scoring.json;

import static org.driftward.scoring.json.Pieces.field;
import static org.driftward.scoring.json.Pieces.quoted;
import static org.driftward.scoring.json.Pieces.run;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.List;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.jspecify.annotations.Nullable;

/**
 * The scores of a snapshot, as Jackson would write them but out of {@link Pieces}: a set of vital
 * signs makes two hundred fields, and all but the numbers and moments recur. For generators that
 * take JSON as it is, which is all but those that build a tree.
 */
final class ScoresWriter extends StdSerializer<List<Score>> {

  private static final long serialVersionUID = 1L;

  private static final Pieces<Name, SerializedString> NAMES = new Pieces<>(Name::json);
  private static final Pieces<Risk, SerializedString> RISKS = new Pieces<>(Risk::json);
  private static final Pieces<Cell, Frame> FRAMES = new Pieces<>(Cell::frame);

  private static final SerializedString HIGH = run(",\"high\":");
  private static final SerializedString COMPLETE = run(",\"complete\":true");
  private static final SerializedString INCOMPLETE = run(",\"complete\":false");
  private static final SerializedString USUAL = run(",\"usual\":");
  private static final SerializedString MISSING = run(",\"missing\":[");
  private static final SerializedString OUTDATED = run("],\"outdated\":[");
  private static final SerializedString INPUTS = run("],\"inputs\":[");
  private static final SerializedString END = run("]}");

  /** How a score begins. */
  private record Name(String id, String title, String version) {
    SerializedString json() {
      return run(
          "{\"id\":"
              + quoted(id)
              + field("title", title)
              + field("version", version)
              + ",\"low\":");
    }
  }

  private record Risk(String risk, String riskIfWorst, int single) {
    SerializedString json() {
      return run(field("risk", risk) + field("riskIfWorst", riskIfWorst) + ",\"single\":" + single);
    }
  }

  /** All of an input but its value and when it was taken. */
  private record Cell(
      String code, @Nullable String unit, int points, String band, String row, String source) {
    Frame frame() {
      return new Frame(
          run("{\"code\":" + quoted(code) + ",\"value\":"),
          run(field("unit", unit) + ",\"takenAt\":"),
          run(
              ",\"points\":"
                  + points
                  + field("band", band)
                  + field("row", row)
                  + field("source", source)));
    }
  }

  /** What stands before the value, before the moment and after it. */
  private record Frame(
      SerializedString beforeValue, SerializedString beforeMoment, SerializedString after) {}

  ScoresWriter() {
    super(List.class, false);
  }

  @Override
  public void serialize(List<Score> scores, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    out.writeStartArray(scores, scores.size());
    for (var score : scores) {
      write(score, out);
    }
    out.writeEndArray();
  }

  private static void write(Score score, JsonGenerator out) throws IOException {
    out.writeRawValue(NAMES.of(new Name(score.id(), score.title(), score.version())));
    out.writeRaw(score.low().toString());
    out.writeRaw(HIGH);
    out.writeRaw(score.high().toString());
    out.writeRaw(score.complete() ? COMPLETE : INCOMPLETE);
    out.writeRaw(RISKS.of(new Risk(score.risk(), score.riskIfWorst(), score.single())));
    if (score.usual() != null) {
      out.writeRaw(USUAL);
      out.writeRaw(score.usual().toString());
    }
    out.writeRaw(MISSING);
    write(score.missing(), out);
    out.writeRaw(OUTDATED);
    write(score.outdated(), out);
    out.writeRaw(INPUTS);
    for (int i = 0; i < score.inputs().size(); i++) {
      out.writeRaw(i == 0 ? "" : ",");
      write(score.inputs().get(i), out);
    }
    out.writeRaw(END);
  }

  private static void write(List<String> codes, JsonGenerator out) throws IOException {
    for (int i = 0; i < codes.size(); i++) {
      out.writeRaw(i == 0 ? "" : ",");
      out.writeRaw(quoted(codes.get(i)));
    }
  }

  private static void write(ScoredInput input, JsonGenerator out) throws IOException {
    var frame =
        FRAMES.of(
            new Cell(
                input.code(),
                input.unit(),
                input.points(),
                input.band(),
                input.row(),
                input.source()));
    out.writeRaw(frame.beforeValue);
    out.writeRaw(value(input.value()));
    out.writeRaw(frame.beforeMoment);
    out.writeRaw(Texts.of(input.takenAt()));
    out.writeRaw(frame.after);
    if (input.derivedFrom() != null) {
      out.writeRaw(field("derivedFrom", input.derivedFrom()));
    }
    out.writeRaw('}');
  }

  private static String value(Scalar scalar) {
    return scalar.number() != null ? scalar.number().toString() : quoted(scalar.plain());
  }
}
