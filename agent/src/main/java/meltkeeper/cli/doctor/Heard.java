package meltkeeper.cli.doctor;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Signal;

/**
 * What was heard while the doctor listened, and how often each value changed. Safe for use by
 * several threads.
 */
public final class Heard implements Outlet {

  /** Readings of one signal of one printer. */
  record Course(long readings, long changes, String last) {

    Course and(String value) {
      return new Course(readings + 1, value.equals(last) ? changes : changes + 1, value);
    }
  }

  private final Decoder decoder;
  private final Map<String, Map<Signal, Course>> courses = new HashMap<>();
  private final Map<Rejected.Reason, Rejected> faults = new TreeMap<>();

  public Heard(Decoder decoder) {
    this.decoder = decoder;
  }

  /** Takes one message or line. */
  public synchronized void take(Received received) {
    decoder.decode(received, this);
  }

  @Override
  public synchronized void reading(Reading reading) {
    Told told = Told.of(reading);
    Map<Signal, Course> ofPrinter =
        courses.computeIfAbsent(reading.sample().hotEnd().printer(), name -> new HashMap<>());
    Course before = ofPrinter.get(told.signal());
    ofPrinter.put(
        told.signal(), before == null ? new Course(1, 0, told.value()) : before.and(told.value()));
  }

  @Override
  public synchronized void rejected(Rejected rejected) {
    if (rejected.reason().isFault()) {
      faults.putIfAbsent(rejected.reason(), rejected);
    }
  }

  synchronized boolean hears(String printer) {
    return courses.containsKey(printer);
  }

  synchronized Optional<Course> course(String printer, Signal signal) {
    return Optional.ofNullable(courses.getOrDefault(printer, Map.of()).get(signal));
  }

  /** The first of each reason for which something was not read. */
  synchronized Map<Rejected.Reason, Rejected> faults() {
    return new TreeMap<>(faults);
  }
}
