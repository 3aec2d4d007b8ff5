package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which Host headers name this server. */
final class HostNamesTest {

  private final HostNames hosts = new HostNames("127.0.0.1", Set.of("shelf.shop.example"));

  @ParameterizedTest
  @ValueSource(
      strings = {
        "127.0.0.1",
        "127.0.0.1:8266",
        "192.0.2.7:8266",
        "localhost",
        "LOCALHOST:8266",
        "[::1]:8266",
        "shelf.shop.example",
        "Shelf.Shop.Example:8266"
      })
  void ownName_isAdmitted(String host) {
    assertThat(hosts.admits(host)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "evil.example",
        "evil.example:8266",
        "localhost.evil.example",
        "127.0.0.1.evil.example",
        "shelf.shop.example.evil.example",
        "127.0.0.1:8266:8266",
        "127.0.0.1 evil.example",
        "[::1",
        "::1",
        "localhost:port"
      })
  void otherName_isNot(String host) {
    assertThat(hosts.admits(host)).isFalse();
  }
}
