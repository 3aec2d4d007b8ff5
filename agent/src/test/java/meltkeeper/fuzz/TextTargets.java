package meltkeeper.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import meltkeeper.config.ConfigReader;
import meltkeeper.desk.Bench;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import meltkeeper.desk.When;
import meltkeeper.outlook.GcodeBatch;
import meltkeeper.protocol.motion.MotionLimits;

/**
 * What takes any text of people and other programs. It is taken, or refused with faults in words;
 * an exception of any other kind is a fault of ours.
 */
final class TextTargets {

  void configuration(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    ConfigReader.read("meltkeeper.yaml", text)
        .fold(
            settings -> true,
            faults -> {
              if (faults.isEmpty()) {
                throw new AssertionError("refused without a word");
              }
              return false;
            });
  }

  void pastOnPaper(byte[] bytes) {
    try {
      new Bench()
          .desk
          .paper()
          .take("past.csv", new String(bytes, StandardCharsets.UTF_8), Bench.NOW);
    } catch (RefusedException e) {
      told(e);
    }
  }

  void bodies(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    for (String word : ToldAct.Verb.words()) {
      try {
        Bench bench = new Bench();
        ToldAct.read(word, ToldAct.object(text))
            .done(bench.desk, new When(ZoneId.of("Europe/Vienna"), Bench.NOW));
      } catch (RefusedException e) {
        told(e);
      }
    }
  }

  void batches(byte[] bytes) throws IOException {
    try {
      new GcodeBatch("batch.gcode", MotionLimits.DEFAULT, hotEnd -> 150.0)
          .read(new ByteArrayInputStream(bytes));
    } catch (RefusedException e) {
      told(e);
    }
  }

  private static void told(RefusedException e) {
    if (e.faults().isEmpty()) {
      throw new AssertionError("refused without a word");
    }
  }
}
