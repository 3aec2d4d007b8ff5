package meltkeeper.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

final class JamWordsTest {

  @Test
  void actionThatFollows_isToldWithItsDelay() {
    assertThat(JamWords.actsAfter(Duration.ofMinutes(2)))
        .isEqualTo(". The jam action follows in 2 min, unless you acknowledge this");
    assertThat(JamWords.actsAfter(Duration.ofSeconds(90)))
        .isEqualTo(". The jam action follows in 90 s, unless you acknowledge this");
  }
}
