package meltkeeper.config;

import java.util.List;
import java.util.function.Function;
import meltkeeper.protocol.Fault;

/** What reading a configuration comes to. */
public sealed interface Result {

  /** Either of the two, by what it is. */
  <T> T fold(Function<Settings, T> valid, Function<List<Fault>, T> faulty);

  /** No fault. */
  record Valid(Settings settings) implements Result {
    @Override
    public <T> T fold(Function<Settings, T> valid, Function<List<Fault>, T> faulty) {
      return valid.apply(settings);
    }
  }

  /**
   * Faults.
   *
   * @param faults at least one, in the order of their lines
   */
  record Faulty(List<Fault> faults) implements Result {
    public Faulty {
      faults = List.copyOf(faults);
    }

    @Override
    public <T> T fold(Function<Settings, T> valid, Function<List<Fault>, T> faulty) {
      return faulty.apply(faults);
    }
  }
}
