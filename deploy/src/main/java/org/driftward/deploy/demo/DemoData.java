package org.driftward.deploy.demo;

import java.nio.file.Path;

/** Where the demo keeps its progress. */
public record DemoData(Path file) {}
