package org.driftward.scoring.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Text that comes from a definition, a policy or the catalogue and so is the same in very many
 * snapshots: its escaped bytes are made once and copied from then on.
 */
final class RecurringText extends StdSerializer<String> {

  private static final long serialVersionUID = 1L;

  /** More than the definitions of a house hold; texts beyond are written as any other. */
  private static final int MOST = 10_000;

  private static final Map<String, SerializedString> KNOWN = new ConcurrentHashMap<>();

  RecurringText() {
    super(String.class);
  }

  @Override
  public void serialize(String text, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    var known = KNOWN.get(text);
    if (known != null) {
      out.writeString(known);
      return;
    }
    if (KNOWN.size() < MOST) {
      KNOWN.put(text, new SerializedString(text));
    }
    out.writeString(text);
  }
}
