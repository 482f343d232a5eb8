package org.driftward.ingest.catalogue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;

/** The catalogue as a list of YAML files, one for each region, in the order of the examination. */
public final class CatalogueFiles implements Catalogue {

  private static final List<String> SHIPPED =
      List.of(
          "general",
          "vital-signs",
          "head",
          "eyes",
          "ears",
          "nose",
          "mouth-throat",
          "neck",
          "cranial-nerves",
          "chest",
          "heart",
          "limbs",
          "pulses",
          "abdomen",
          "elimination",
          "skin",
          "reflexes",
          "pain",
          "lines",
          "special",
          "note");

  private final Map<String, CatalogueEntry> byCode;

  private CatalogueFiles(List<CatalogueEntry> entries) {
    var map = new LinkedHashMap<String, CatalogueEntry>();
    for (var entry : entries) {
      if (map.put(entry.code(), entry) != null) {
        throw new IllegalStateException("catalogue: " + entry.code() + " is listed twice");
      }
    }
    this.byCode = map;
  }

  public static Catalogue shipped() {
    return Holder.SHIPPED_CATALOGUE;
  }

  @Override
  public List<CatalogueEntry> entries() {
    return List.copyOf(byCode.values());
  }

  @Override
  public Optional<CatalogueEntry> find(String code) {
    return Optional.ofNullable(byCode.get(code));
  }

  private static List<CatalogueEntry> read(String region) {
    var resource = "/catalogue/" + region + ".yaml";
    var yaml =
        JsonMapper.builder(new YAMLFactory())
            .findAndAddModules()
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();
    try (var in = CatalogueFiles.class.getResourceAsStream(resource)) {
      return List.of(yaml.readValue(in, CatalogueEntry[].class));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(resource + ": " + e.getMessage(), e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class Holder {
    static final Catalogue SHIPPED_CATALOGUE = load();

    private static Catalogue load() {
      var entries = new ArrayList<CatalogueEntry>();
      SHIPPED.forEach(region -> entries.addAll(read(region)));
      return new CatalogueFiles(entries);
    }
  }
}
