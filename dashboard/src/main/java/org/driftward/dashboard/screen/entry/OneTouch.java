package org.driftward.dashboard.screen.entry;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * What one touch in a region records of one patient: the findings that {@code entry/one-touch.yaml}
 * names, each with the value of a well adult, but for those that were different last time or that
 * somebody is concerned about. Those are asked.
 *
 * @param values by region, in the order of the file
 * @param asked by region, what is left out and why, in words
 */
public record OneTouch(
    Map<String, Map<FindingKey, FindingValue>> values, Map<String, List<String>> asked) {

  private static final String FILE = "/entry/one-touch.yaml";

  /** Of nobody in particular: everything that the file names. */
  static OneTouch of(Catalogue catalogue) {
    return of(catalogue, null);
  }

  /**
   * @param record of the patient, or null where nothing is known
   * @throws IllegalStateException naming what the file says that the catalogue does not know
   */
  public static OneTouch of(Catalogue catalogue, @Nullable StayRecord record) {
    var before = record == null ? Map.<FindingKey, StayRecord.Taken>of() : record.newest();
    var open = OpenReasons.of(record);
    var values = new LinkedHashMap<String, Map<FindingKey, FindingValue>>();
    var asked = new LinkedHashMap<String, List<String>>();
    read()
        .forEach(
            (region, names) -> {
              var sound = new LinkedHashMap<FindingKey, FindingValue>();
              var others = new ArrayList<String>();
              for (var name : names) {
                var entry = entry(catalogue, region, name);
                var usual = entry.usual().orElseThrow();
                for (var key : keys(entry, name)) {
                  var last = before.get(key);
                  boolean differed = last != null && !last.value().equals(usual);
                  if (differed) {
                    others.add(
                        words(entry, key) + " was " + last.value().plain().replace('-', ' '));
                  } else if (open.concern(entry, key)) {
                    others.add(words(entry, key) + " belongs to an open reason");
                  } else {
                    sound.put(key, usual);
                  }
                }
              }
              values.put(region, sound);
              asked.put(region, others);
            });
    return new OneTouch(values, asked);
  }

  /** The value that one touch records in a field; empty where it leaves the field alone. */
  Optional<FindingValue> value(CatalogueEntry entry, FindingKey key) {
    return Optional.ofNullable(in(entry.region()).get(key));
  }

  /** What one touch records in a region. */
  Map<FindingKey, FindingValue> in(String region) {
    return values.getOrDefault(region, Map.of());
  }

  List<String> asked(String region) {
    return asked.getOrDefault(region, List.of());
  }

  private static CatalogueEntry entry(Catalogue catalogue, String region, String name) {
    return catalogue
        .find(name.split("@", 2)[0])
        .filter(entry -> entry.region().equals(region))
        .filter(entry -> entry.usual().isPresent())
        .orElseThrow(() -> new IllegalStateException(FILE + ": " + region + " has no " + name));
  }

  private static List<FindingKey> keys(CatalogueEntry entry, String name) {
    var parts = name.split("@", 2);
    @Nullable String site = parts.length < 2 ? null : parts[1];
    boolean known = site == null ? entry.sites().isEmpty() : entry.sites().contains(site);
    if (!known) {
      throw new IllegalStateException(FILE + ": " + name + " is at none of " + entry.sites());
    }
    return entry.sided()
        ? List.of(
            new FindingKey(entry.code(), site, Side.LEFT),
            new FindingKey(entry.code(), site, Side.RIGHT))
        : List.of(new FindingKey(entry.code(), site, null));
  }

  private static String words(CatalogueEntry entry, FindingKey key) {
    return entry.name()
        + (key.site() == null ? "" : ", " + key.site().replace('-', ' '))
        + (key.side() == null ? "" : ", " + key.side().word());
  }

  private static Map<String, List<String>> read() {
    try (var in = OneTouch.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException(FILE + " is not in the application");
      }
      return new YAMLMapper()
          .readValue(in, new TypeReference<LinkedHashMap<String, List<String>>>() {});
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
