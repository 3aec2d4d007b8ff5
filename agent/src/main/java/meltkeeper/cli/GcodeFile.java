package meltkeeper.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.ToDoubleFunction;
import meltkeeper.outlook.Batch;
import meltkeeper.outlook.GcodeBatch;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.motion.MotionLimits;

/** Reads a G-code file as a batch. */
final class GcodeFile {

  private GcodeFile() {}

  /**
   * The batch.
   *
   * @throws FaultsException when there is no such file, or it cannot be read
   * @throws meltkeeper.desk.RefusedException when it holds no batch
   */
  static Batch batch(Path file, MotionLimits limits, ToDoubleFunction<Integer> hotAboveCelsius) {
    GcodeBatch batch = new GcodeBatch(String.valueOf(file.getFileName()), limits, hotAboveCelsius);
    try (InputStream in = Files.newInputStream(file)) {
      return batch.read(in);
    } catch (IOException e) {
      throw new FaultsException(
          List.of(
              Fault.of(
                  "--gcode",
                  file,
                  "a file that can be read",
                  Files.exists(file) ? e.toString() : "there is no such file")));
    }
  }
}
