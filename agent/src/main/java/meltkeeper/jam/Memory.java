package meltkeeper.jam;

/**
 * Where a detector keeps its numbers between two runs of the agent. One method of the detector
 * serves both ways: it hands over each value under a name and goes on with what comes back, which
 * is the same value when written down, and the kept one when read back. A value that was never kept
 * stays as it is, so that a state kept by an older version still serves.
 */
interface Memory {

  String word(String name, String now);

  /** The same memory, with every name below that one. */
  default Memory within(String place) {
    return (name, now) -> word(place + "." + name, now);
  }

  default double number(String name, double now) {
    return Double.parseDouble(word(name, Double.toString(now)));
  }

  default long count(String name, long now) {
    return Long.parseLong(word(name, Long.toString(now)));
  }

  default boolean flag(String name, boolean now) {
    return Boolean.parseBoolean(word(name, Boolean.toString(now)));
  }

  default void numbers(String name, double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] = number(name + i, values[i]);
    }
  }
}
