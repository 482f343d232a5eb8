/**
 * Where the mapping of foreign codes comes from: a YAML file that a site edits. What is not mapped
 * is counted here until a desk takes it up.
 */
@NullMarked
package org.driftward.ingest.mapping;

import org.jspecify.annotations.NullMarked;
