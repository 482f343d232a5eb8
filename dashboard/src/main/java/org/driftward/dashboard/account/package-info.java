/**
 * Who may sign in: accounts, passwords, and what becomes of those who guess. Knows PostgreSQL and
 * bcrypt; nothing of HTTP.
 */
@NullMarked
package org.driftward.dashboard.account;

import org.jspecify.annotations.NullMarked;
