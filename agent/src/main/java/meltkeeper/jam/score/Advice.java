package meltkeeper.jam.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Which limit fits, and how far the data bear it out.
 *
 * @param wantedHours printing hours between two false alarms; empty when nothing can be said
 */
public record Advice(OptionalDouble wantedHours, String because) {

  /** A limit that gives up more than a fifth of the lead is too quiet (our own choice). */
  private static final double LEAST_LEAD_SHARE = 0.8;

  private static final double ENOUGH_LOW = 0.9;

  /**
   * The quietest limit that catches no less than any other, keeps four fifths of the lead, and is
   * not noisier than it should be.
   *
   * @param scores of the limits tried on the same recordings, at least one
   */
  public static Advice of(List<LimitScore> scores) {
    LimitScore quietest = quietest(scores);
    if (!(quietest.printingHours() > 0)) {
      return new Advice(
          OptionalDouble.empty(),
          "Nothing can be said: outside of jams, no filament was asked for in these recordings.");
    }
    if (quietest.jams() == 0) {
      return new Advice(
          OptionalDouble.empty(),
          "No jam is noted, so nothing tells what a limit would miss. " + hours(quietest));
    }
    List<LimitScore> calm = scores.stream().filter(s -> !s.isNoisierThanWanted()).toList();
    if (calm.isEmpty()) {
      return new Advice(
          OptionalDouble.of(quietest.wantedHours()),
          words(quietest)
              + " is the quietest of those tried, and still gives more false alarms than it"
              + " should: look at what they say, and whether each jam is noted. "
              + hours(quietest));
    }
    LimitScore fits = fitting(calm);
    return new Advice(OptionalDouble.of(fits.wantedHours()), reason(fits, scores.size()));
  }

  private static LimitScore fitting(List<LimitScore> calm) {
    int caught = calm.stream().mapToInt(LimitScore::calledSoon).max().orElse(0);
    List<LimitScore> catching = calm.stream().filter(s -> s.calledSoon() == caught).toList();
    int warned = catching.stream().mapToInt(LimitScore::warned).max().orElse(0);
    List<LimitScore> warning = catching.stream().filter(s -> s.warned() == warned).toList();
    double lead = warning.stream().mapToDouble(Advice::median).max().orElse(0);
    return quietest(warning.stream().filter(s -> median(s) >= LEAST_LEAD_SHARE * lead).toList());
  }

  private static LimitScore quietest(List<LimitScore> scores) {
    return scores.stream()
        .max(Comparator.comparingDouble(LimitScore::wantedHours))
        .orElseThrow(() -> new IllegalArgumentException("no limit was tried"));
  }

  private static double median(LimitScore score) {
    return score.leadMinutes(0.5).orElse(0);
  }

  private static String reason(LimitScore fits, int tried) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        fits.calledSoon() == 0
            ? "No limit tried calls any of these jams: see whether the watch is blind there."
            : String.format(
                Locale.ROOT,
                "%s fits%s: it warns of %d of %d jams before the stall, half of them by %.1f min"
                    + " or more, and has called %d within 5 min of it.",
                words(fits),
                tried > 1 ? " best of those tried, being the quietest that catches as much" : "",
                fits.warned(),
                fits.jams(),
                median(fits),
                fits.calledSoon()));
    Bounds share = Bounds.ofShare(fits.warned(), fits.jams());
    if (share.low() < ENOUGH_LOW) {
      sentences.add(
          String.format(
              Locale.ROOT,
              "%d known jam%s: that is anything from %.0f %% to %.0f %% of jams like %s warned"
                  + " of (95 %%).",
              fits.jams(),
              fits.jams() == 1 ? "" : "s",
              100 * share.low(),
              100 * share.high(),
              fits.jams() == 1 ? "it" : "these"));
    }
    sentences.add(hours(fits));
    return String.join(" ", sentences);
  }

  private static String hours(LimitScore score) {
    double most =
        1000 * Bounds.upperOfCount(score.falseAlarms()) / Math.max(1e-9, score.printingHours());
    String seen =
        String.format(
            Locale.ROOT,
            "%s in %.0f printing hours outside of jams show%s at most %.1f in 1000 h (95 %%)",
            alarms(score.falseAlarms()),
            score.printingHours(),
            score.falseAlarms() > 1 ? "" : "s",
            most);
    if (score.isShown()) {
      return seen + ": " + words(score) + " is borne out.";
    }
    return seen
        + String.format(
            Locale.ROOT,
            ": too few hours to bear out %s, which takes %.0f h without any.",
            words(score),
            Math.ceil(Bounds.upperOfCount(0) * score.wantedHours()));
  }

  private static String alarms(int count) {
    return switch (count) {
      case 0 -> "No false alarm";
      case 1 -> "1 false alarm";
      default -> count + " false alarms";
    };
  }

  private static String words(LimitScore score) {
    return String.format(Locale.ROOT, "%.0fh", score.wantedHours());
  }
}
