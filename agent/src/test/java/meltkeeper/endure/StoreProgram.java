package meltkeeper.endure;

import meltkeeper.ledger.Limits;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;

/**
 * A process of its own that credits the ramp into a store, some readings a commit, and prints after
 * each up to when everything is on the disk. Arguments: file, number of commits.
 */
final class StoreProgram {

  static final Ramp RAMP = new Ramp(0.01);

  private static final int READINGS_A_COMMIT = 4;

  private StoreProgram() {}

  public static void main(String[] args) {
    try (Store store = Stores.open("jdbc:sqlite:" + args[0])) {
      store.claim();
      Intake intake = new Intake((received, outlet) -> {}, hotEnd -> Limits.DEFAULT, store);
      int commits = Integer.parseInt(args[1]);
      for (int number = 0; number < commits * READINGS_A_COMMIT; number++) {
        hear(intake, number);
        if (number % READINGS_A_COMMIT == READINGS_A_COMMIT - 1) {
          intake.commit();
          System.out.println(Ramp.nanos(number));
        }
      }
    }
  }

  /** Lets the intake hear the reading of that number. */
  static void hear(Intake intake, long number) {
    Sample sample = Sample.timed(Books.HERON, Ramp.nanos(number), Ramp.nanos(number));
    intake.reading(new Reading.HotEndTemperature(sample, RAMP.celsius(number)));
    intake.reading(
        new Reading.FilamentCommanded(sample, number * Ramp.MICROMETRES_PER_READING / 1000.0));
  }
}
