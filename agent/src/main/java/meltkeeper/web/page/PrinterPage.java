package meltkeeper.web.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import meltkeeper.desk.AlertLine;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.desk.SwapQuestion;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.plot.Gauge;
import meltkeeper.plot.Words;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.view.AgentView;

/**
 * One printer.
 *
 * @param hotEnds by index
 * @param alerts of it, the newest first
 * @param questions that the shop is asked of it
 */
public record PrinterPage(
    String name, List<OfHotEnd> hotEnds, List<AlertLine> alerts, List<SwapQuestion> questions) {

  private static final int LATEST_ALERTS = 500;
  private static final int SHOWN_ALERTS = 20;

  /**
   * One hot end.
   *
   * @param since when its plots begin
   * @param evidence of each detector against its limit
   * @param temperature a plot of the last hours; empty before there are two minutes
   * @param feed the same of the feed ratio
   * @param hours a plot of hot hours by temperature; empty for none
   * @param slots what it holds of each kind
   */
  public record OfHotEnd(
      HotEndCard card,
      Optional<String> since,
      List<Evidence> evidence,
      Optional<String> temperature,
      Optional<String> feed,
      Optional<String> hours,
      List<Slot> slots) {}

  /** What one detector has. */
  public record Evidence(String detector, String words, String gauge) {}

  /**
   * The place of one kind of part.
   *
   * @param part that is there
   * @param wear of it
   * @param shelf others of the kind that could be fitted, by id
   */
  public record Slot(
      String kind, Optional<PartLine> part, Optional<Wear> wear, List<String> shelf) {}

  static Optional<PrinterPage> of(AgentView agent, Frame frame, String name) {
    List<HotEndCard> cards =
        OverviewPage.cards(agent, frame).stream()
            .filter(card -> card.hotEnd().printer().equals(name))
            .sorted(Comparator.comparing(HotEndCard::hotEnd))
            .toList();
    if (cards.isEmpty()) {
      return Optional.empty();
    }
    List<PartLine> parts = agent.parts(PartFilter.IN_USE);
    Live live = agent.live();
    return Optional.of(
        new PrinterPage(
            name,
            cards.stream().map(card -> hotEnd(agent, frame, live, parts, card)).toList(),
            agent.desk().alerts().latest(LATEST_ALERTS).stream()
                .filter(alert -> alert.printer().equals(Optional.of(name)))
                .limit(SHOWN_ALERTS)
                .toList(),
            agent.desk().questions().open(agent.nowNanos()).stream()
                .filter(question -> question.printer().equals(name))
                .toList()));
  }

  private static OfHotEnd hotEnd(
      AgentView agent, Frame frame, Live live, List<PartLine> parts, HotEndCard card) {
    var minutes = agent.trail(card.hotEnd());
    Optional<HotEndLive> now = live.hotEnd(card.hotEnd());
    return new OfHotEnd(
        card,
        TrailPlots.since(minutes, frame),
        now.map(hotEnd -> evidence(hotEnd, frame)).orElse(List.of()),
        TrailPlots.temperature(minutes, frame),
        TrailPlots.feed(minutes, frame),
        now.map(hotEnd -> TallyAnswer.of(hotEnd.total()).hotSeconds())
            .filter(seconds -> !seconds.isEmpty())
            .map(seconds -> LifePlots.hours(card.name(), seconds)),
        slots(agent, parts, card));
  }

  private static List<Evidence> evidence(HotEndLive hotEnd, Frame frame) {
    List<Evidence> evidence = new ArrayList<>();
    hotEnd.watch().evidence().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            entry -> {
              String detector = frame.say("detector." + entry.getKey().word());
              double value = Math.max(0, entry.getValue());
              String words =
                  frame.say("printer.evidence-of", String.format(Locale.ROOT, "%.0f", 100 * value));
              evidence.add(
                  new Evidence(
                      detector,
                      words,
                      new Gauge(new Words(detector, words), value, value, value, 1).svg()));
            });
    return evidence;
  }

  private static List<Slot> slots(AgentView agent, List<PartLine> parts, HotEndCard card) {
    TreeSet<String> kinds = new TreeSet<>(agent.shop().kindNames());
    parts.stream()
        .filter(part -> isOn(part, card.hotEnd()))
        .map(PartLine::kind)
        .forEach(kinds::add);
    List<Slot> slots = new ArrayList<>();
    for (String kind : kinds) {
      Optional<PartLine> held =
          parts.stream()
              .filter(part -> part.kind().equals(kind) && isOn(part, card.hotEnd()))
              .findFirst();
      slots.add(
          new Slot(
              kind,
              held,
              held.flatMap(
                  part -> card.wear().stream().filter(w -> w.id().equals(part.id())).findFirst()),
              parts.stream()
                  .filter(part -> part.kind().equals(kind) && part.fitted().isEmpty())
                  .map(PartLine::id)
                  .toList()));
    }
    slots.sort(Comparator.comparing((Slot slot) -> slot.part().isEmpty()));
    return slots;
  }

  private static boolean isOn(PartLine part, HotEnd hotEnd) {
    return part.fitted()
        .filter(at -> at.printer().equals(hotEnd.printer()) && at.hotEnd() == hotEnd.index())
        .isPresent();
  }
}
