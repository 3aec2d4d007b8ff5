package meltkeeper.jam.sim;

import java.util.function.Consumer;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;

/** What one printer does for some hours, well or with one fault, whoever simulates it. */
public interface Course {

  HotEnd hotEnd();

  /** True when the encoder counts both directions up. */
  boolean encoderIsBlind();

  /** What the encoder shows of a millimetre fed, when nothing slips. */
  double encoderScale();

  /** Runs it once, hands over its readings, and tells the truth. */
  Truth run(Consumer<Reading> readings);
}
