package org.driftward.ingest.narrative;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.NarrativeReader;
import org.driftward.ingest.core.narrative.Grammar;
import org.driftward.ingest.core.narrative.NarrativeEngine;
import org.driftward.ingest.core.narrative.Wording;
import org.driftward.ingest.unit.UcumConversion;

/** Grammar and words as YAML files: one of words for each region of the catalogue. */
public final class NarrativeFiles {

  private NarrativeFiles() {}

  public static NarrativeReader shipped() {
    return Holder.SHIPPED;
  }

  /** The shipped words and grammar for another catalogue, with further words. */
  static NarrativeReader with(Catalogue catalogue, List<Wording> further) {
    var mapper =
        JsonMapper.builder(new YAMLFactory())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();
    var words = new ArrayList<>(further);
    Catalogue.shipped().entries().stream()
        .map(CatalogueEntry::region)
        .distinct()
        .filter(region -> !region.equals("note"))
        .forEach(region -> words.addAll(List.of(read(mapper, region, Wording[].class))));
    return new NarrativeEngine(
        catalogue, words, read(mapper, "grammar", Grammar.class), new UcumConversion()::convert);
  }

  private static <T> T read(ObjectMapper mapper, String name, Class<T> type) {
    var resource = "/narrative/" + name + ".yaml";
    try (var in = NarrativeFiles.class.getResourceAsStream(resource)) {
      return mapper.readValue(in, type);
    } catch (IOException e) {
      throw new IllegalStateException(resource + ": " + e.getMessage(), e);
    }
  }

  private static final class Holder {
    static final NarrativeReader SHIPPED = with(Catalogue.shipped(), List.of());
  }
}
