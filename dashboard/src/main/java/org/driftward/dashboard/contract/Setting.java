package org.driftward.dashboard.contract;

/**
 * What every page must say about where it runs.
 *
 * @param demo whether patients are invented; then every page says so
 * @param clockRate seconds of ward time in one second of wall-clock time; 1 outside the demo
 */
public record Setting(boolean demo, double clockRate) {}
