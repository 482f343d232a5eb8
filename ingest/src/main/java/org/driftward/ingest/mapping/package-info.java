/**
 * Where the mapping of foreign codes comes from besides the database: the YAML file that ships, and
 * the one that a site lays over it.
 */
@NullMarked
package org.driftward.ingest.mapping;

import org.jspecify.annotations.NullMarked;
