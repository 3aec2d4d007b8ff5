package meltkeeper.endure;

import java.nio.file.Path;

/** One kind of fault, tried on the agent again and again from a seed. */
public interface Ordeal {

  /** In words, as the table has it. */
  String fault();

  /** How often it is tried along with all other tests. */
  default int few() {
    return 1;
  }

  /**
   * Tries it.
   *
   * @param times how often, at least once
   * @param seed of everything that is left to chance
   * @param folder an empty one of its own
   * @return what came of it; what must not be at all fails with an {@link AssertionError}
   */
  Tried endure(int times, long seed, Path folder) throws Exception;
}
