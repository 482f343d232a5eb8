package org.driftward.dashboard.account;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PasswordsTest {

  private final Passwords passwords = new Passwords(4);

  /**
   * Hashes made by another implementation: the test vectors of the original bcrypt of OpenBSD as
   * Openwall's crypt_blowfish prints them, from memory.
   */
  @Test
  void shouldAgreeWithAnotherImplementation() {
    assertThat(
            passwords.match("U*U", "$2a$05$CCCCCCCCCCCCCCCCCCCCC.E5YPO9kmyuRGyh0XouQYb4YMJKvyOeW"))
        .isTrue();
    assertThat(
            passwords.match("U*U*", "$2a$05$CCCCCCCCCCCCCCCCCCCCC.E5YPO9kmyuRGyh0XouQYb4YMJKvyOeW"))
        .isFalse();
  }

  @Test
  void shouldSaltEveryHash() {
    assertThat(passwords.hash("the same")).isNotEqualTo(passwords.hash("the same"));
  }

  @Test
  void shouldMatchNothingWhereThereIsNoAccount() {
    assertThat(passwords.match("anything", null)).isFalse();
  }
}
