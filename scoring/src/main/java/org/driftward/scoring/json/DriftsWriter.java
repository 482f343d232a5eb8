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
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Drift;
import org.jspecify.annotations.Nullable;

/** The drift of a snapshot, as {@link ScoresWriter} writes its scores. */
final class DriftsWriter extends StdSerializer<List<Drift>> {

  private static final long serialVersionUID = 1L;

  private static final Pieces<Series, SerializedString> SERIES = new Pieces<>(Series::json);
  private static final Pieces<Unit, SerializedString> UNITS = new Pieces<>(Unit::json);

  private static final SerializedString SPREAD = run(",\"spread\":");
  private static final SerializedString DRIFT = run(",\"drift\":");
  private static final SerializedString WORSE = run(",\"worse\":true,\"accumulated\":");
  private static final SerializedString NOT_WORSE = run(",\"worse\":false,\"accumulated\":");
  private static final SerializedString SETS = run(",\"sets\":");
  private static final SerializedString FROM = run(",\"from\":");
  private static final SerializedString UNTIL = run(",\"until\":");

  /** How a drift begins. */
  private record Series(String code, @Nullable String site, @Nullable Side side) {
    SerializedString json() {
      return run(
          "{\"code\":"
              + quoted(code)
              + field("site", site)
              + field("side", side == null ? null : side.word())
              + ",\"value\":");
    }
  }

  /** What stands between the value and the baseline. */
  private record Unit(@Nullable String unit) {
    SerializedString json() {
      return run(field("unit", unit) + ",\"baseline\":");
    }
  }

  DriftsWriter() {
    super(List.class, false);
  }

  @Override
  public void serialize(List<Drift> drifts, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    out.writeStartArray(drifts, drifts.size());
    for (var drift : drifts) {
      out.writeRawValue(SERIES.of(new Series(drift.code(), drift.site(), drift.side())));
      Texts.write(drift.value(), out);
      out.writeRaw(UNITS.of(new Unit(drift.unit())));
      Texts.write(drift.baseline(), out);
      out.writeRaw(SPREAD);
      Texts.write(drift.spread(), out);
      out.writeRaw(DRIFT);
      Texts.write(drift.drift(), out);
      out.writeRaw(drift.worse() ? WORSE : NOT_WORSE);
      Texts.write(drift.accumulated(), out);
      out.writeRaw(SETS);
      out.writeRaw(Integer.toString(drift.sets()));
      out.writeRaw(FROM);
      out.writeRaw(Texts.of(drift.from()));
      out.writeRaw(UNTIL);
      out.writeRaw(Texts.of(drift.until()));
      out.writeRaw('}');
    }
    out.writeEndArray();
  }
}
