package meltkeeper.caution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.caution.Caution.Sort;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class LookoutTest {

  private static final HotEnd HERON = HotEnd.first("heron");
  private static final long SECOND = 1_000_000_000L;
  private static final long MINUTE = 60 * SECOND;

  private Guard guard = new Guard(OptionalDouble.of(250), 150, 30 * MINUTE, 10 * MINUTE);
  private Lookout lookout = Lookout.on(HERON);
  private final List<Caution> found = new ArrayList<>();

  private static Sample at(long second) {
    return Sample.arrived(HERON, second * SECOND);
  }

  private void take(Reading reading) {
    lookout = lookout.step(guard, reading, found::add);
  }

  private void celsius(long second, double celsius) {
    take(new Reading.HotEndTemperature(at(second), celsius));
  }

  private void job(long second, JobState state) {
    take(new Reading.JobStatus(at(second), state));
  }

  private void fed(long second, double millimetres) {
    take(new Reading.FilamentCommanded(at(second), millimetres));
  }

  /** What was said, the ends of what never began left out. */
  private List<String> told() {
    List<String> told = new ArrayList<>();
    List<Sort> on = new ArrayList<>();
    for (Caution caution : found) {
      if (caution instanceof Caution.Over) {
        if (on.remove(caution.sort())) {
          told.add(caution.atNanos() / SECOND + " over " + caution.sort());
        }
      } else if (!on.contains(caution.sort())) {
        on.add(caution.sort());
        told.add(caution.atNanos() / SECOND + " " + caution.sort());
      }
    }
    return told;
  }

  @Test
  void liner_aboveItsLimitForFiveSeconds_isTooHotUntilFiveKelvinBelow() {
    celsius(0, 249);
    celsius(2, 251);
    celsius(4, 252);
    celsius(7, 253);
    celsius(9, 249.9);
    celsius(11, 251);
    celsius(20, 251);
    celsius(22, 244.9);

    assertThat(told()).containsExactly("7 TOO_HOT", "22 over TOO_HOT");
  }

  @Test
  void oneWrongValue_callsNobody() {
    celsius(0, 220);
    celsius(2, 600);
    celsius(4, 220);
    celsius(6, 600);
    celsius(8, 220);

    assertThat(told()).isEmpty();
  }

  @Test
  void atTheLimit_isNotAboveIt() {
    celsius(0, 250);
    celsius(60, 250);

    assertThat(told()).isEmpty();
  }

  @Test
  void hotEndWithoutALimit_isNeverTooHot() {
    guard = guard.withLimit(OptionalDouble.empty());
    celsius(0, 590);
    celsius(60, 590);

    assertThat(told()).isEmpty();
  }

  @Test
  void hotWithNothingToDo_isIdleAfterItsTime() {
    for (long second = 0; second <= 1900; second += 100) {
      celsius(second, 215);
    }
    celsius(2000, 149);

    assertThat(told()).containsExactly("1800 IDLE_HOT", "2000 over IDLE_HOT");
  }

  @Test
  void printing_isNoIdleness_andPausingBeginsIt() {
    job(0, JobState.PRINTING);
    for (long second = 0; second <= 4000; second += 100) {
      celsius(second, 215);
    }
    job(4001, JobState.PAUSED);
    for (long second = 4100; second <= 6000; second += 100) {
      celsius(second, 215);
    }
    job(6001, JobState.PRINTING);

    assertThat(told()).containsExactly("5900 IDLE_HOT", "6001 over IDLE_HOT");
  }

  @Test
  void feeding_isNoIdleness_andRetractingAloneIs() {
    for (long second = 0; second <= 4000; second += 100) {
      celsius(second, 215);
      fed(second + 1, (double) second);
    }
    assertThat(told()).isEmpty();
    for (long second = 4100; second <= 6000; second += 100) {
      celsius(second, 215);
      fed(second + 1, 3000 - second / 100.0);
    }
    assertThat(told()).containsExactly("5900 IDLE_HOT");
  }

  @Test
  void longSilence_startsIdlenessAnew() {
    celsius(0, 215);
    celsius(3000, 215);
    celsius(3100, 215);

    assertThat(told()).isEmpty();
  }

  @Test
  void printerUnheardWhileHot_isSilentUntilItIsHeard() {
    celsius(0, 215);
    lookout.look(guard, 0, 599 * SECOND, found::add);
    assertThat(told()).isEmpty();
    lookout.look(guard, 0, 600 * SECOND, found::add);
    celsius(700, 30);

    assertThat(told()).containsExactly("600 SILENT", "700 over SILENT");
  }

  @Test
  void printerUnheardWhileCold_isOnlySwitchedOff() {
    celsius(0, 30);
    lookout.look(guard, 0, 5000 * SECOND, found::add);
    Lookout.on(HERON).look(guard, 0, 5000 * SECOND, found::add);

    assertThat(told()).isEmpty();
  }

  @Test
  void otherHotEndOfTheSamePrinter_heard_breaksTheSilence() {
    celsius(0, 215);
    lookout.look(guard, 500 * SECOND, 700 * SECOND, found::add);

    assertThat(told()).isEmpty();
  }

  @Test
  void retainedReading_tellsNothingOfHeat() {
    take(new Reading.HotEndTemperature(at(0).asRetained(), 300));
    take(new Reading.HotEndTemperature(at(60).asRetained(), 300));

    assertThat(lookout).isEqualTo(Lookout.on(HERON));
    assertThat(told()).isEmpty();
  }

  @Test
  void texts_sayWhatIsTheMatterAndWhatToDo() {
    assertThat(new Caution.TooHot(HERON, 0, 253.4, 250).text())
        .isEqualTo(
            "heron is at 253 °C, above the limit of 250 °C for a part that is fitted. Turn its"
                + " target down now; if it goes on rising, switch the printer off at the wall.");
    assertThat(new Caution.IdleHot(HERON, 0, 215, 31 * MINUTE).text())
        .isEqualTo(
            "heron has been hot (215 °C) with nothing to do for 31 min. The filament in it is"
                + " cooking: go on printing, or turn it off.");
    assertThat(new Caution.Silent(HERON, 0, 215, 10 * MINUTE).text())
        .isEqualTo(
            "heron has not been heard for 10 min, and was at 215 °C when it fell silent. Look"
                + " whether it still runs, and check its cable or network.");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -1, 601})
  void guardWithAnImpossibleLimit_isRefused(double celsius) {
    assertThatThrownBy(() -> guard.withLimit(OptionalDouble.of(celsius)))
        .hasMessageContaining("0 to 600 °C");
  }
}
