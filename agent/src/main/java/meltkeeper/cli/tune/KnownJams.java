package meltkeeper.cli.tune;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import meltkeeper.jam.score.FeedRecord;
import meltkeeper.jam.score.KnownJam;
import meltkeeper.jam.score.LimitScore;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;

/** The jams noted beside each recording, and the printing outside of them. Mutable. */
public final class KnownJams {

  private static final double NANOS = 1e9;

  /** A jam as it was noted, and as alarms are scored against it. */
  record Known(JamNote note, KnownJam jam) {}

  private final List<Known> known = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();
  private final Map<HotEnd, Double> heardUntil = new HashMap<>();
  private Map<HotEnd, FeedRecord> recording = new HashMap<>();
  private double printingHours;

  /** Takes a reading of the recording that is being read. */
  public void take(Reading reading) {
    recording.computeIfAbsent(reading.sample().hotEnd(), hotEnd -> new FeedRecord()).take(reading);
  }

  /** Ends the recording of that name, with the jams noted beside it. */
  public void recorded(String name, List<JamNote> notes) {
    new TreeMap<>(recording).forEach((hotEnd, feed) -> checkOrder(name, hotEnd, feed));
    List<KnownJam> jams = new ArrayList<>();
    for (JamNote note : notes) {
      FeedRecord feed = recording.getOrDefault(note.hotEnd(), new FeedRecord());
      double stalled = note.stalledNanos() / NANOS;
      if (feed.covers(stalled)) {
        OptionalDouble began = note.began().stream().mapToDouble(at -> at / NANOS).findFirst();
        KnownJam jam = KnownJam.noted(note.hotEnd(), began, stalled, feed);
        jams.add(jam);
        known.add(new Known(note, jam));
      } else {
        faults.add(outside(note, feed));
      }
    }
    recording.forEach(
        (hotEnd, feed) ->
            printingHours += feed.printingHours(at -> !KnownJam.anyHolds(jams, hotEnd, at)));
    recording = new HashMap<>();
  }

  /** Readings that are older than what was taken in are late, and the watch never sees them. */
  private void checkOrder(String name, HotEnd hotEnd, FeedRecord feed) {
    double before = heardUntil.getOrDefault(hotEnd, Double.NEGATIVE_INFINITY);
    if (!(feed.firstSeconds() > before)) {
      faults.add(
          Fault.of(
                  "RECORDING",
                  text(feed.firstSeconds()),
                  "readings of "
                      + hotEnd
                      + " after those of the recordings before it: "
                      + text(before),
                  "name recordings in order of time, and each once")
              .at(name));
    }
    heardUntil.put(hotEnd, feed.lastSeconds());
  }

  private static Fault outside(JamNote note, FeedRecord feed) {
    boolean heard = !Double.isNaN(feed.firstSeconds());
    return Fault.of(
            "stalled",
            note.toldStalled(),
            heard
                ? "a time at which "
                    + note.hotEnd()
                    + " is heard in this recording: "
                    + text(feed.firstSeconds())
                    + " to "
                    + text(feed.lastSeconds())
                : "a jam of a hot end that is heard in this recording",
            heard
                ? "a time without an offset is by the shop's clock"
                : note.hotEnd() + " is not; drop the line, or see what replay rejects")
        .at(note.place());
  }

  private static String text(double seconds) {
    return Moments.instant((long) (seconds * NANOS)).toString();
  }

  /** What is wrong with the notes, seen against the recordings. */
  public List<Fault> faults() {
    return List.copyOf(faults);
  }

  List<Known> known() {
    return List.copyOf(known);
  }

  /** How a limit did. */
  LimitScore score(Trial trial) {
    List<KnownJam> jams = known.stream().map(Known::jam).toList();
    int falseAlarms =
        trial.alarms().entrySet().stream()
            .mapToInt(of -> of.getValue().count(at -> !KnownJam.anyHolds(jams, of.getKey(), at)))
            .sum();
    return new LimitScore(
        trial.wantedHours(),
        jams.stream().map(jam -> jam.call(trial.of(jam.hotEnd()))).toList(),
        falseAlarms,
        printingHours);
  }
}
