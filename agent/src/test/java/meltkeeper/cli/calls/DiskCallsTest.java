package meltkeeper.cli.calls;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalLong;
import meltkeeper.store.Episodes;
import org.junit.jupiter.api.Test;

final class DiskCallsTest {

  private final Episodes episodes = new Episodes(topic -> List.of("office"), List.of());
  private OptionalLong freeBytes = OptionalLong.empty();
  private final DiskCalls calls = new DiskCalls(() -> freeBytes, episodes);
  private long now;

  private List<String> told(OptionalLong free) {
    freeBytes = free;
    calls.look(++now);
    return episodes.pending().stream()
        .map(posting -> posting.alert().phase().label() + " " + posting.alert().text())
        .toList();
  }

  @Test
  void diskThatFillsUp_callsOnce_andClearsWellAboveTheLimit() {
    String began =
        "began Only 99 MB are free on the disk of the store. Make room: once it is full, hours are"
            + " kept in memory alone.";
    assertThat(told(OptionalLong.empty())).isEmpty();
    assertThat(told(OptionalLong.of(DiskCalls.LITTLE_BYTES))).isEmpty();
    assertThat(told(OptionalLong.of(DiskCalls.LITTLE_BYTES - 1))).containsExactly(began);
    assertThat(told(OptionalLong.of(3_000_000))).containsExactly(began);
    assertThat(told(OptionalLong.of(150_000_000))).containsExactly(began);
    assertThat(told(OptionalLong.of(250_000_000)))
        .containsExactly(began, "all-clear 250 MB are free on the disk of the store again.");
  }
}
