package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.Side;

/**
 * A place as it was said.
 *
 * @param sites of any finding; empty where only a side was said
 * @param sides empty where none was said
 * @param plural whether both of a pair are meant where no side was said
 */
record Place(Set<String> sites, Set<Side> sides, boolean plural) {

  private static final Set<Side> NO_SIDE = EnumSet.noneOf(Side.class);

  /**
   * Puts side and site together: "left and right ankle", "right ankle and shin", "ankle and shin on
   * the left". Each of the result has its side, if one was said for it.
   */
  static List<Place> joined(List<Place> said) {
    var joined = new ArrayList<Place>();
    var before = EnumSet.noneOf(Side.class);
    boolean after = false;
    for (var place : said) {
      if (!place.sites.isEmpty()) {
        var sides = EnumSet.copyOf(before);
        sides.addAll(place.sides);
        joined.add(new Place(place.sites, sides, place.plural));
        before.clear();
        after = false;
      } else if (!joined.isEmpty() && (after || joined.get(joined.size() - 1).sides.isEmpty())) {
        boolean more = after;
        joined.replaceAll(
            known ->
                known.sides.isEmpty() || more
                    ? new Place(known.sites, union(known.sides, place.sides), known.plural)
                    : known);
        after = true;
      } else {
        before.addAll(place.sides);
      }
    }
    if (!before.isEmpty()) {
      joined.add(new Place(Set.of(), before, false));
    }
    return inherited(joined);
  }

  private static List<Place> inherited(List<Place> places) {
    var all = new ArrayList<Place>();
    Set<Side> last = NO_SIDE;
    for (var place : places) {
      boolean lacks = place.sides.isEmpty() && !place.plural;
      all.add(lacks ? new Place(place.sites, last, false) : place);
      last = lacks ? last : place.sides;
    }
    return all;
  }

  private static Set<Side> union(Set<Side> one, Set<Side> other) {
    var both = EnumSet.noneOf(Side.class);
    both.addAll(one);
    both.addAll(other);
    return both;
  }
}
