package org.driftward.deploy.roles;

/** Fired once every part of the played roles has been started. */
public record Launched() {}
