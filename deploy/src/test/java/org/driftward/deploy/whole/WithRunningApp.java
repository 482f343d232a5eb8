package org.driftward.deploy.whole;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * One application, empty and with all roles, that every test class with this annotation shares. It
 * is handed to constructors and methods that take a {@link RunningApp}; whoever shares it uses
 * encounters and accounts of its own.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(SharedApp.class)
public @interface WithRunningApp {}
