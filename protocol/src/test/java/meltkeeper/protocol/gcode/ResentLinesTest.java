package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A line that is sent again after a resend request feeds once. Totals are sums by hand; resending:
 * RepRap dialect, common practice, no source; section numbers: NISTIR 6556 (Kramer, Proctor,
 * Messina 2000).
 */
class ResentLinesTest {

  private final Told told = new Told();
  private final Tracker tracker = new Tracker();

  @Test
  void linesSentAgain_afterAResendRequest_countOnce() {
    run("N0 M110", "N1 M83", "N2 G1 X1 E1", "N3 G1 X2 E1", "N4 G1 X3 E1");
    tracker.resendFrom(3);
    run("N3 G1 X2 E1", "N4 G1 X3 E1", "N5 G1 X4 E1");

    assertThat(total()).isEqualTo(4);
  }

  @Test
  void resendRequest_comingTwice_changesNothing() {
    run("N1 M83", "N2 G1 X1 E1", "N3 G1 X2 E1");
    tracker.resendFrom(2);
    run("N2 G1 X1 E1");
    tracker.resendFrom(2);
    run("N2 G1 X1 E1", "N3 G1 X2 E1", "N4 G1 X3 E1");
    tracker.resendFrom(9);
    run("N5 G1 X3 E1");

    assertThat(total()).isEqualTo(4);
  }

  @Test
  void lineNumbers_setAnew_countFromThere() {
    run("M83", "N1 G1 X1 E1", "N2 G1 X2 E1");
    tracker.resendFrom(1);
    run("N0 M110", "N1 G1 X1 E1", "M110 N7", "N8 G1 X1 E1");
    tracker.resendFrom(8);
    run("N8 G1 X1 E1");

    assertThat(total()).isEqualTo(4);
  }

  /** Section 3.3.1: line numbers may be repeated. */
  @Test
  void lineNumbers_repeatedUnasked_count() {
    run("N5 M83", "N5 G1 X1 E1", "N5 G1 X1 E1", "N1 G1 X1 E1");

    assertThat(total()).isEqualTo(3);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {81, 82, 83, 84, 85, 86})
  void program_withResendsAnywhere_givesTheTotalOfTheProgramAlone(long seed) {
    Random random = new Random(seed);
    List<String> program = new ArrayList<>(List.of("N0 M110", "N1 M83"));
    long micrometres = 0;
    for (int n = 2; n < 2_000; n++) {
      int length = random.nextInt(2_000) - 300;
      micrometres += length;
      program.add("N" + n + " G1 X1 E" + length / 1000.0);
    }
    for (int n = 0, highest = 0; n < program.size(); n++) {
      run(program.get(n));
      highest = Math.max(highest, n);
      if (n > 2 && random.nextInt(20) == 0) {
        int from = Math.max(2, highest - random.nextInt(6));
        tracker.resendFrom(from);
        n = from - 1;
      }
    }

    assertThat(total()).isCloseTo(micrometres / 1000.0, within(1e-6));
  }

  private double total() {
    return tracker.filamentMillimetres(0);
  }

  private void run(String... lines) {
    told.step(tracker, lines);
  }
}
