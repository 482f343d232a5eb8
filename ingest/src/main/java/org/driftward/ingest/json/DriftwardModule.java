package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleDeserializers;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Word;

/**
 * The JSON shapes that Jackson cannot guess: {@link Word} enums as words, and {@link Finding} as
 * one flat object; and moments, which it knows but slowly. Found by {@code META-INF/services}, so
 * every mapper that looks for modules has it.
 */
public final class DriftwardModule extends SimpleModule {

  private static final long serialVersionUID = 1L;

  public DriftwardModule() {
    super("driftward");
    addSerializer(new WordWriter());
    addSerializer(new InstantWriter());
    addSerializer(Finding.class, new FindingJson.Writer());
    var deserializers = new WordDeserializers();
    deserializers.addDeserializer(Instant.class, new InstantReader());
    deserializers.addDeserializer(Finding.class, new FindingJson.Reader());
    setDeserializers(deserializers);
  }

  private static final class WordWriter extends StdSerializer<Word> {
    private static final long serialVersionUID = 1L;

    WordWriter() {
      super(Word.class);
    }

    @Override
    public void serialize(Word word, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(word.word());
    }
  }

  private static final class WordDeserializers extends SimpleDeserializers {
    private static final long serialVersionUID = 1L;

    @Override
    @SuppressWarnings({"unchecked", "rawtypes"})
    public JsonDeserializer<?> findEnumDeserializer(
        Class<?> type, DeserializationConfig config, BeanDescription description) {
      return Word.class.isAssignableFrom(type) ? new WordReader(type) : null;
    }
  }

  private static final class WordReader<E extends Enum<E> & Word> extends StdDeserializer<E> {
    private static final long serialVersionUID = 1L;

    private final Class<E> type;

    WordReader(Class<E> type) {
      super(type);
      this.type = type;
    }

    @Override
    public E deserialize(JsonParser in, DeserializationContext context) throws IOException {
      var word = in.getValueAsString();
      if (word == null) {
        return type.cast(context.handleUnexpectedToken(type, in));
      }
      try {
        return Word.parse(type, word);
      } catch (IllegalArgumentException e) {
        return type.cast(context.handleWeirdStringValue(type, word, "%s", e.getMessage()));
      }
    }
  }
}
