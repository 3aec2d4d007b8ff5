package meltkeeper.cli.calls;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Alert;
import meltkeeper.store.Episodes;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Outbox;
import org.junit.jupiter.api.Test;

final class DueCallsTest {

  private static final long DAY = 86_400_000_000_000L;

  private final Outbox outbox = new MemoryStore().outbox();
  private Episodes episodes = episodes();
  private DueCalls calls = calls();
  private long now = 1_772_438_400_000_000_000L;

  private DueCalls calls() {
    return new DueCalls(episodes, outbox.open(), ZoneOffset.UTC);
  }

  private Episodes episodes() {
    return new Episodes(topic -> List.of("office"), outbox.open());
  }

  private void look(double... hours) {
    List<DueCalls.Ahead> parts = new ArrayList<>();
    for (double left : hours) {
      parts.add(
          new DueCalls.Ahead(
              "L-014",
              "liner",
              HotEnd.first("heron"),
              left,
              Optional.of(Instant.parse("2026-03-05T08:00:00Z"))));
    }
    now += DAY;
    calls.look(parts, now);
    outbox.post(episodes.pending());
    episodes.posted();
  }

  private List<String> told() {
    List<String> told = new ArrayList<>();
    outbox
        .latest(100)
        .forEach(
            entry -> {
              Alert alert = entry.alert();
              told.add(alert.topic().label() + " " + alert.phase().label());
            });
    Collections.reverse(told);
    return told;
  }

  @Test
  void partThatNearsAndPassesItsAge_callsOnceForEach_andClearsWhenItIsOff() {
    look(240);
    look(160);
    look(100);
    look(0);
    look(0);
    look();

    assertThat(told())
        .containsExactly(
            "part-due began", "part-overdue began", "part-due all-clear", "part-overdue all-clear");
    assertThat(outbox.latest(4).get(3).alert().text())
        .isEqualTo(
            "L-014 (liner) on heron reaches its advised age in about 7 days (2026-03-05 08:00) at"
                + " its present duty. Have a new one ready.");
  }

  @Test
  void dateThatWavers_callsOnce() {
    look(167);
    look(170);
    look(167);
    assertThat(told()).containsExactly("part-due began");
    look(217);
    assertThat(told()).containsExactly("part-due began", "part-due all-clear");
  }

  @Test
  void restart_callsNobodyAgain_andClearsAPartThatIsOff() {
    look(100);
    episodes = episodes();
    calls = calls();
    look(90);
    assertThat(told()).containsExactly("part-due began");
    episodes = episodes();
    calls = calls();
    look();
    assertThat(told()).containsExactly("part-due began", "part-due all-clear");
  }
}
