package org.driftward.scoring.json;

import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.util.List;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Score;

/** Which lists of a snapshot are written out of {@link Pieces}: annotations for the record. */
interface SnapshotLists {

  @JsonSerialize(using = ScoresWriter.class)
  List<Score> scores();

  @JsonSerialize(using = DriftsWriter.class)
  List<Drift> drift();
}
