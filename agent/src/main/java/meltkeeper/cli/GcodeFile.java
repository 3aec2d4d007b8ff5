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
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.motion.MotionLimits;

/** Reads a G-code file as a batch, chunk by chunk, however large it is. */
final class GcodeFile {

  private static final int CHUNK_BYTES = 1 << 16;

  private GcodeFile() {}

  /**
   * The batch.
   *
   * @throws FaultsException when there is no such file, or it cannot be read
   * @throws meltkeeper.desk.RefusedException when it holds no batch
   */
  static Batch batch(Path file, MotionLimits limits, ToDoubleFunction<Integer> hotAboveCelsius) {
    GcodeBatch batch = new GcodeBatch(String.valueOf(file.getFileName()), limits, hotAboveCelsius);
    LineSplitter splitter = new LineSplitter();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] chunk = new byte[CHUNK_BYTES];
      int read = in.read(chunk);
      while (read >= 0) {
        splitter.feed(chunk, 0, read, line -> batch.accept(line, splitter.lineNumber()));
        read = in.read(chunk);
      }
      splitter.feed(new byte[] {'\n'}, line -> batch.accept(line, splitter.lineNumber()));
    } catch (IOException e) {
      throw new FaultsException(
          List.of(
              Fault.of(
                  "--gcode",
                  file,
                  "a file that can be read",
                  Files.exists(file) ? e.toString() : "there is no such file")));
    }
    return batch.finish();
  }
}
