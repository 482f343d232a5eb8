package org.driftward.scoring.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Snapshot;

/**
 * Writes a {@link Scalar} as a plain number or string, and the long lists of a snapshot out of
 * {@link Pieces}. Found by {@code META-INF/services}.
 */
public final class ScoringModule extends SimpleModule {

  private static final long serialVersionUID = 1L;

  public ScoringModule() {
    super("driftward-scoring");
    addSerializer(new Writer());
    addDeserializer(Scalar.class, new Reader());
    setMixInAnnotation(Snapshot.class, SnapshotLists.class);
  }

  private static final class Writer extends StdSerializer<Scalar> {
    private static final long serialVersionUID = 1L;

    Writer() {
      super(Scalar.class);
    }

    @Override
    public void serialize(Scalar scalar, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      if (scalar.number() != null) {
        out.writeNumber(scalar.number());
      } else {
        out.writeString(scalar.word());
      }
    }
  }

  private static final class Reader extends StdDeserializer<Scalar> {
    private static final long serialVersionUID = 1L;

    Reader() {
      super(Scalar.class);
    }

    @Override
    public Scalar deserialize(JsonParser in, DeserializationContext context) throws IOException {
      var token = in.currentToken();
      if (token.isNumeric()) {
        return Scalar.of(in.getDecimalValue());
      }
      if (token.isScalarValue()) {
        return Scalar.of(in.getText());
      }
      return (Scalar) context.handleUnexpectedToken(Scalar.class, in);
    }
  }
}
