package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.math.BigDecimal;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.FindingValue.Text;
import org.driftward.ingest.contract.Recent;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;

/**
 * A finding as one flat object: {@code code}, where it has them {@code site} and {@code side}, and
 * either {@code value} with {@code unit}, or {@code grade}, or {@code coded}, or {@code text}.
 */
final class FindingJson {

  private FindingJson() {}

  static final class Writer extends StdSerializer<Finding> {
    private static final long serialVersionUID = 1L;

    Writer() {
      super(Finding.class);
    }

    @Override
    public void serialize(Finding finding, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeStartObject();
      out.writeStringField("code", finding.key().code());
      if (finding.key().site() != null) {
        out.writeStringField("site", finding.key().site());
      }
      if (finding.key().side() != null) {
        out.writeStringField("side", finding.key().side().word());
      }
      writeValue(finding.value(), out);
      out.writeEndObject();
    }

    private static void writeValue(FindingValue value, JsonGenerator out) throws IOException {
      if (value instanceof Quantity quantity) {
        out.writeNumberField("value", quantity.value());
        out.writeStringField("unit", quantity.unit());
      } else if (value instanceof Grade grade) {
        out.writeNumberField("grade", grade.grade());
      } else if (value instanceof Coded coded) {
        out.writeStringField("coded", coded.code());
      } else if (value instanceof Text text) {
        out.writeStringField("text", text.text());
      }
    }
  }

  static final class Reader extends StdDeserializer<Finding> {
    private static final long serialVersionUID = 1L;

    Reader() {
      super(Finding.class);
    }

    @Override
    public Finding deserialize(JsonParser in, DeserializationContext context) throws IOException {
      if (!in.isExpectedStartObjectToken()) {
        return (Finding) context.handleUnexpectedToken(Finding.class, in);
      }
      var parts = new Parts();
      for (var field = in.nextFieldName(); field != null; field = in.nextFieldName()) {
        var token = in.nextToken();
        if (token != JsonToken.VALUE_NULL) {
          parts.take(field, in);
        }
      }
      try {
        return parts.finding();
      } catch (IllegalArgumentException e) {
        return context.reportInputMismatch(Finding.class, "%s", e.getMessage());
      }
    }
  }

  /** The fields of one finding while they are read. */
  private static final class Parts {
    private static final Recent<String, FindingKey> UNSITED = new Recent<>(10);

    private String code;
    private String site;
    private String side;
    private BigDecimal value;
    private String unit;
    private Integer grade;
    private String coded;
    private String text;

    void take(String field, JsonParser in) throws IOException {
      switch (field) {
        case "code" -> code = in.getText();
        case "site" -> site = in.getText();
        case "side" -> side = in.getText();
        case "value" -> value = in.getDecimalValue();
        case "unit" -> unit = in.getText();
        case "grade" -> grade = in.getIntValue();
        case "coded" -> coded = in.getText();
        case "text" -> text = in.getText();
        default -> in.skipChildren();
      }
    }

    Finding finding() throws IOException {
      if (code == null) {
        throw new IllegalArgumentException("a finding without a code");
      }
      return new Finding(key(), value());
    }

    private FindingKey key() throws IOException {
      return site == null && side == null
          ? UNSITED.get(code, FindingKey::of)
          : new FindingKey(code, site, side == null ? null : Word.parse(Side.class, side));
    }

    private FindingValue value() {
      int given = count(value) + count(grade) + count(coded) + count(text);
      if (given != 1) {
        throw new IllegalArgumentException(
            "a finding has one of value, grade, coded and text, not " + given);
      }
      if (value != null) {
        if (unit == null) {
          throw new IllegalArgumentException("a value without a unit");
        }
        return new Quantity(value, unit);
      }
      if (grade != null) {
        return new Grade(grade);
      }
      return coded != null ? new Coded(coded) : new Text(text);
    }

    private static int count(Object part) {
      return part == null ? 0 : 1;
    }
  }
}
