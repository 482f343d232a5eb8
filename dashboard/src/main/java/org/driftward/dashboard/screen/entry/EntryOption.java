package org.driftward.dashboard.screen.entry;

/**
 * One touch target of a graded or coded field.
 *
 * @param value as the form sends it
 * @param words as people read it
 * @param meaning what a bare grade means; empty where the words say it
 * @param expected whether a well adult may have it
 * @param before whether it was the last recorded value
 * @param chosen whether it is recorded in the assessment that is being corrected
 */
public record EntryOption(
    String value, String words, String meaning, boolean expected, boolean before, boolean chosen) {}
