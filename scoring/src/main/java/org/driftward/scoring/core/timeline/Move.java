package org.driftward.scoring.core.timeline;

/**
 * An assessment that goes over to the encounter its own was merged into, or comes back from there
 * because the merge was undone.
 *
 * @param to the encounter that is told
 * @param entry with {@link Entry#movedFrom}
 * @param arrives false to take it back
 */
public record Move(String to, Entry entry, boolean arrives) {}
