package meltkeeper.ledger;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/** A hot end's readings told one after another, in seconds, and what the ledger made of them. */
final class Course {

  static final HotEnd HERON = HotEnd.first("heron");

  private final Ledger ledger;
  private final Credits credits;
  private final Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
  private final List<Reading> told = new ArrayList<>();
  private Account account = Account.opened(HERON);

  private Course(Limits limits, Grid grid) {
    this.ledger = new Ledger(limits);
    this.credits = new Credits(HERON, grid);
  }

  static Course began() {
    return with(Limits.DEFAULT);
  }

  static Course with(Limits limits) {
    return new Course(limits, Grid.PLAIN);
  }

  static Course on(Grid grid) {
    return new Course(Limits.DEFAULT, grid);
  }

  static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }

  static Sample arriving(double seconds) {
    return Sample.arrived(HERON, nanos(seconds));
  }

  static Sample timed(double seconds, double arrivalSeconds) {
    return Sample.timed(HERON, nanos(seconds), nanos(arrivalSeconds));
  }

  Course tell(Reading reading) {
    told.add(reading);
    Ledger.Step step = ledger.step(account, reading, credits);
    account = step.account();
    verdicts.merge(step.verdict(), 1, Integer::sum);
    return this;
  }

  Course celsius(double seconds, double celsius) {
    return tell(new Reading.HotEndTemperature(arriving(seconds), celsius));
  }

  Course target(double seconds, double celsius) {
    return tell(new Reading.HotEndTarget(arriving(seconds), celsius));
  }

  Course commanded(double seconds, double millimetres) {
    return tell(new Reading.FilamentCommanded(arriving(seconds), millimetres));
  }

  Course measured(double seconds, double millimetres) {
    return tell(new Reading.FilamentMeasured(arriving(seconds), millimetres));
  }

  Course job(double seconds, JobState state) {
    return tell(new Reading.JobStatus(arriving(seconds), state));
  }

  Course restarted(double seconds) {
    return tell(new Reading.Notice(arriving(seconds), NoticeKind.RESTARTED, "start"));
  }

  /** A plateau sampled every so many seconds, both ends told. */
  Course plateau(double fromSeconds, double untilSeconds, double everySeconds, double celsius) {
    for (double at = fromSeconds; at < untilSeconds; at += everySeconds) {
      celsius(at, celsius);
    }
    return celsius(untilSeconds, celsius);
  }

  Account account() {
    return account;
  }

  Tally total() {
    return credits.sum();
  }

  List<Bucket> buckets() {
    return credits.buckets();
  }

  List<Reading> told() {
    return told;
  }

  int count(Verdict verdict) {
    return verdicts.getOrDefault(verdict, 0);
  }

  /** Seconds in a band. */
  double in(int lowerCelsius) {
    return total().exposure().in(lowerCelsius).nanos() / 1e9;
  }

  double hotSeconds() {
    return total().exposure().hotNanos() / 1e9;
  }
}
