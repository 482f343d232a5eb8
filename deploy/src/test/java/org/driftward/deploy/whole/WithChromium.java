package org.driftward.deploy.whole;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * The machine's Chromium, one process that every test with this annotation, or in a class with it,
 * shares. Constructors and methods that take a {@code Browser} are handed it. Where there is none
 * the tests are skipped and say so.
 */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(Chromium.class)
public @interface WithChromium {}
