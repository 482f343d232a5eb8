package org.driftward.scoring.contract;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.definition.Guides;

/**
 * What people read beside a score: where it comes from, whom it must not be used for, what its
 * classes of risk ask for. The words are ours; local policy comes first.
 *
 * @param id of the score, as in {@link Score#id()}
 * @param source the published table
 * @param notes how the source was read, and its limits
 * @param notFor whom and what the score must not be used for
 * @param risks in order of precedence: the first that holds counts
 */
public record ScoreGuide(
    String id,
    String title,
    String version,
    String source,
    List<String> notes,
    List<String> notFor,
    List<Risk> risks) {

  /**
   * @param id as in {@link Score#risk()}; two classes may share it
   * @param when it holds, in words, for example {@code 5 or more}
   * @param response what the source or common practice asks for
   */
  public record Risk(String id, String when, String response) {}

  public ScoreGuide {
    Objects.requireNonNull(id, "id");
    notes = List.copyOf(notes);
    notFor = List.copyOf(notFor);
    risks = List.copyOf(risks);
  }

  /**
   * The guides of the definitions in force, leading ones first.
   *
   * @param extra a hospital's own definition files, or directories of them
   * @throws IllegalStateException naming file and line of a broken definition
   */
  public static List<ScoreGuide> inForce(List<Path> extra, Catalogue catalogue) {
    return Guides.read(extra, catalogue);
  }
}
