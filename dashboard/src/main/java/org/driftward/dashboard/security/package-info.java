/**
 * Signing in over HTTP: a form with a cookie for people, HTTP Basic for programs, and the check
 * that a browser's request comes from our own pages. Decisions about passwords are made in {@code
 * account}.
 */
@NullMarked
package org.driftward.dashboard.security;

import org.jspecify.annotations.NullMarked;
