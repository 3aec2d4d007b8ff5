package meltkeeper.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BackoffTest {

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void pauses_doubleToTheLimit_andStayThereForEver(long seed) {
    Backoff backoff = new Backoff(Duration.ofSeconds(1), Duration.ofSeconds(60), new Random(seed));
    int[] longest = {1, 2, 4, 8, 16, 32, 60, 60, 60};
    for (int seconds : longest) {
      assertThat(backoff.next())
          .isBetween(Duration.ofMillis(500L * seconds), Duration.ofSeconds(seconds));
    }
    for (int i = 0; i < 1_000; i++) {
      assertThat(backoff.next()).isBetween(Duration.ofSeconds(30), Duration.ofSeconds(60));
    }
    backoff.reset();
    assertThat(backoff.next()).isLessThanOrEqualTo(Duration.ofSeconds(1));
  }

  @Test
  void pauses_thatFall_areRefused() {
    assertThatThrownBy(
            () -> new Backoff(Duration.ofSeconds(2), Duration.ofSeconds(1), new Random(1)))
        .hasMessageContaining("PT2S to PT1S");
  }
}
