package meltkeeper.web.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import meltkeeper.desk.SwapQuestion;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.view.AgentView;

/**
 * The whole shop.
 *
 * @param cards hot ends, those in trouble first
 * @param summary the shop in one sentence
 * @param questions what the shop is asked
 * @param search what was searched for, blank for nothing
 * @param number of this stretch of the list, from 1
 * @param of so many stretches
 */
public record OverviewPage(
    List<HotEndCard> cards,
    String summary,
    List<SwapQuestion> questions,
    String search,
    int number,
    int of) {

  static final int AT_ONCE = 50;

  public OverviewPage {
    cards = List.copyOf(cards);
    questions = List.copyOf(questions);
  }

  static OverviewPage of(AgentView agent, Frame frame, String search, int number) {
    List<HotEndCard> all = cards(agent, frame);
    List<HotEndCard> found = all.stream().filter(card -> card.matches(search)).toList();
    int stretches = Math.max(1, (found.size() + AT_ONCE - 1) / AT_ONCE);
    int at = Math.max(1, Math.min(number, stretches));
    return new OverviewPage(
        found.subList((at - 1) * AT_ONCE, Math.min(found.size(), at * AT_ONCE)),
        summary(all, frame),
        agent.desk().questions().open(agent.nowNanos()),
        search,
        at,
        stretches);
  }

  static List<HotEndCard> cards(AgentView agent, Frame frame) {
    Live live = agent.live();
    Map<HotEnd, List<FittedOutlook>> fitted =
        agent.outlook().latest().stream().collect(Collectors.groupingBy(FittedOutlook::hotEnd));
    List<HotEndCard> cards = new ArrayList<>();
    Set<String> heard = new HashSet<>();
    for (HotEndLive hotEnd : live.hotEnds()) {
      heard.add(hotEnd.hotEnd().printer());
      cards.add(HotEndCard.of(hotEnd, wear(fitted, hotEnd.hotEnd(), frame), frame));
    }
    for (String printer : agent.shop().printers()) {
      if (!heard.contains(printer)) {
        cards.add(HotEndCard.unheard(printer, wear(fitted, HotEnd.first(printer), frame), frame));
      }
    }
    cards.sort(Comparator.comparing(HotEndCard::standing).thenComparing(HotEndCard::hotEnd));
    return cards;
  }

  private static List<Wear> wear(
      Map<HotEnd, List<FittedOutlook>> fitted, HotEnd hotEnd, Frame frame) {
    return Wear.of(fitted.getOrDefault(hotEnd, List.of()), frame);
  }

  private static String summary(List<HotEndCard> all, Frame frame) {
    if (all.isEmpty()) {
      return frame.say("overview.nobody");
    }
    long trouble = all.stream().filter(card -> card.standing().isTrouble()).count();
    long working = all.stream().filter(card -> card.standing() == Standing.WORKING).count();
    long overdue = all.stream().filter(c -> c.wear().stream().anyMatch(Wear::overdue)).count();
    return trouble > 0
        ? frame.say("overview.trouble", trouble, all.size())
        : overdue > 0
            ? frame.say("overview.overdue", overdue, all.size(), working)
            : frame.say("overview.well", working, all.size());
  }
}
