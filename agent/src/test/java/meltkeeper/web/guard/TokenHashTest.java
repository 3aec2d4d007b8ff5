package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is kept of a token, and the passes made of it. */
final class TokenHashTest {

  private static final TokenHash ABC = TokenHash.of("abc");

  @Test
  void hash_isTheSha256() {
    // FIPS 180-4 test value for "abc", as NIST's Cryptographic Standards and Guidelines publish it.
    assertThat(ABC.written())
        .isEqualTo("sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void written_readBack_matchesTheSameToken() {
    TokenHash read = TokenHash.read(ABC.written() + "\n").orElseThrow();

    assertThat(read.matches("abc")).isTrue();
    assertThat(read.matches("abd")).isFalse();
    assertThat(read.matches("")).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "abc", "sha256:", "sha256:12", "sha1:ba7816bf8f01cfea414140de5dae2223"})
  void anythingElse_isNoHash(String text) {
    assertThat(TokenHash.read(text)).isEmpty();
  }

  @Test
  void freshTokens_areLong_andDiffer() {
    SecureRandom random = new SecureRandom();

    assertThat(TokenHash.freshToken(random)).hasSize(43).isNotEqualTo(TokenHash.freshToken(random));
  }

  @Test
  void pass_isGoodUntilItsTime_andForItsTokenOnly() {
    String pass = ABC.pass(1_000);

    assertThat(ABC.admits(pass, 999)).isTrue();
    assertThat(ABC.admits(pass, 1_000)).isFalse();
    assertThat(TokenHash.of("abd").admits(pass, 999)).isFalse();
    assertThat(ABC.admits(pass.replaceFirst("1000", "9000"), 999)).isFalse();
    assertThat(ABC.admits("nonsense", 999)).isFalse();
  }

  @Test
  void text_tellsNothing() {
    assertThat(ABC).hasToString("(hidden)");
  }
}
