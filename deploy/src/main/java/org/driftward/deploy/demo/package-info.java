/**
 * The demo ward: an invented hospital whose patients get better and worse by themselves, so that a
 * newcomer sees the whole of the work within a minute. Everything here is made up; no course is a
 * clinical reference.
 *
 * <p>Start reading at {@link org.driftward.deploy.demo.Courses}. Nothing here runs outside the
 * demo.
 */
@NullMarked
package org.driftward.deploy.demo;

import org.jspecify.annotations.NullMarked;
