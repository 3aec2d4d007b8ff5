package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.jam.sim.Episode;
import meltkeeper.jam.sim.Fault;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a watch remembers is all of it, of constant size, and says the same after a restart. */
class WatchMemoryTest {

  private static final HotEnd HERON = HotEnd.first("heron");

  private final Bench bench = new Bench(HERON, WatchSettings.DEFAULT);

  @ParameterizedTest
  @EnumSource(Fault.class)
  void sameSeedTwice_givesTheSameFindings(Fault fault) {
    assertThat(findings(77, fault, Integer.MAX_VALUE))
        .isEqualTo(findings(77, fault, Integer.MAX_VALUE));
  }

  /** Restarted at random readings, several times an hour. */
  @ParameterizedTest
  @EnumSource(Fault.class)
  void restartAtAnyReading_changesNothing(Fault fault) {
    assertThat(findings(78, fault, 1000)).isEqualTo(findings(78, fault, Integer.MAX_VALUE));
  }

  private static List<Finding> findings(long seed, Fault fault, int restartEvery) {
    Episode episode = new Episode(seed, fault, 1);
    WatchSettings settings = new WatchSettings(1000, 150, 40, episode.encoderIsBlind());
    Watch[] watch = {Watch.opened(Episode.WREN, settings)};
    Random restarts = new Random(seed);
    List<Finding> findings = new ArrayList<>();
    episode.run(
        reading -> {
          watch[0].step(reading).ifPresent(findings::add);
          if (restartEvery < Integer.MAX_VALUE && restarts.nextInt(restartEvery) == 0) {
            watch[0] = Watch.restored(watch[0].state(), settings);
          }
        });
    return findings;
  }

  @Test
  void memory_staysConstant() {
    bench.print(3600);
    int size = bench.watch().state().values().size();
    bench.print(36_000);
    assertThat(bench.watch().state().values()).hasSize(size);
  }

  @Test
  void stateOfAnOlderVersion_stillServes() {
    bench.print(3600);
    WatchState whole = bench.watch().state();
    SortedMap<String, String> values = new TreeMap<>(whole.values());
    values.keySet().removeIf(name -> name.contains("heater"));
    Watch restored = Watch.restored(new WatchState(HERON, values), WatchSettings.DEFAULT);
    assertThat(restored.state().values()).containsAllEntriesOf(values);
  }

  @Test
  void readingsOutOfOrder_changeNothing() {
    bench.print(600);
    WatchState before = bench.watch().state();
    Optional<Finding> finding = bench.watch().step(bench.lateReading());
    assertThat(finding).isEmpty();
    assertThat(bench.watch().state().values().entrySet())
        .filteredOn(entry -> !entry.getValue().equals(before.values().get(entry.getKey())))
        .extracting(Map.Entry::getKey)
        .containsExactly("signals.late");
  }
}
