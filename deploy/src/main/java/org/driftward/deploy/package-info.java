/** The one runnable application: composition, roles, and the embedded parts. */
package org.driftward.deploy;
