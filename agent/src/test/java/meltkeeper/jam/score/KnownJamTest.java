package meltkeeper.jam.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import org.junit.jupiter.api.Test;

class KnownJamTest {

  private static final HotEnd HERON = HotEnd.first("heron");
  private static final int BEGIN = 30_000;

  private final FeedRecord feed = new FeedRecord();
  private double commanded;
  private double measured;
  private int seconds = BEGIN;

  /** Feeds 1 mm/s, of which a share passes, told every two seconds. */
  private void print(int forSeconds, double share) {
    for (int end = seconds + forSeconds; seconds < end; seconds += 2) {
      Sample sample = Sample.arrived(HERON, seconds * 1_000_000_000L);
      commanded += 2;
      measured += 2 * share;
      feed.take(new Reading.FilamentCommanded(sample, commanded));
      feed.take(new Reading.FilamentMeasured(sample, measured));
    }
  }

  @Test
  void stall_isTheFirstMinuteWithoutFlow_notWhenSomebodyCameBy() {
    print(3600, 1);
    print(1200, 0.05);
    KnownJam jam = KnownJam.noted(HERON, OptionalDouble.empty(), BEGIN + 4790, feed);
    assertThat(jam.wasShown()).isTrue();
    assertThat(jam.stall()).isBetween(BEGIN + 3660.0, BEGIN + 3722.0);
    assertThat(jam.stop()).isEqualTo(jam.stall() - 60);
    assertThat(jam.onset()).isEqualTo(BEGIN + 4790 - 6 * 3600.0);
    assertThat(jam.over()).isEqualTo(BEGIN + 4790 + 1800.0);
  }

  @Test
  void stall_thatTheRecordingDoesNotShow_isTheOneNoted() {
    print(3600, 1);
    print(600, 0.5);
    KnownJam jam = KnownJam.noted(HERON, OptionalDouble.of(BEGIN + 3600), BEGIN + 4000, feed);
    assertThat(jam.wasShown()).isFalse();
    assertThat(jam.stall()).isEqualTo(BEGIN + 4000.0);
    assertThat(jam.stop()).isEqualTo(BEGIN + 4000.0);
    assertThat(jam.onset()).isEqualTo(BEGIN + 3600.0);
  }

  @Test
  void printingHours_areStretchesWithFilamentAskedFor() {
    print(3600, 1);
    seconds += 7200;
    commanded -= 5;
    print(2, 1);
    commanded = 0;
    print(600, 1);
    assertThat(feed.printingHours(at -> true)).isEqualTo((12 + 3) / 12.0);
    assertThat(feed.printingHours(at -> at >= BEGIN + 3600)).isEqualTo(3 / 12.0);
    assertThat(feed.covers(BEGIN)).isTrue();
    assertThat(feed.covers(BEGIN - 1)).isFalse();
  }

  @Test
  void alarm_outsideOfAJam_isNotItsCall() {
    KnownJam jam = new KnownJam(HERON, 1000, 2000, 2000, 3800);
    Alarms alarms = new Alarms();
    for (double at : new double[] {500, 4000}) {
      alarms.at(at, true);
      alarms.at(at + 1, false);
    }
    assertThat(jam.call(alarms).alarm()).isEmpty();
    assertThat(alarms.count(at -> !KnownJam.anyHolds(List.of(jam), HERON, at))).isEqualTo(2);
    alarms.at(5000, true);
    assertThat(new KnownJam(HERON, 1000, 2000, 2000, 6000).call(alarms).secondsAfterStop())
        .hasValue(2000);
    assertThat(KnownJam.anyHolds(List.of(jam), HotEnd.first("wren"), 1500)).isFalse();
  }
}
