package meltkeeper.web.page;

import java.util.List;
import java.util.Locale;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.web.view.AgentView;

/**
 * All parts.
 *
 * @param parts of this stretch of the list
 * @param kinds that a new part may be of
 * @param search what was searched for, blank for nothing
 * @param all true when those that are no longer in use are shown too
 * @param number of this stretch of the list, from 1
 * @param of so many stretches
 */
public record PartsPage(
    List<PartLine> parts, List<String> kinds, String search, boolean all, int number, int of) {

  private static final int AT_ONCE = 100;

  public PartsPage {
    parts = List.copyOf(parts);
    kinds = List.copyOf(kinds);
  }

  static PartsPage of(AgentView agent, String search, boolean all, int number) {
    String words = search.strip().toLowerCase(Locale.ROOT);
    List<PartLine> found =
        agent.parts(all ? PartFilter.ALL : PartFilter.IN_USE).stream()
            .filter(part -> text(part).contains(words))
            .toList();
    int stretches = Math.max(1, (found.size() + AT_ONCE - 1) / AT_ONCE);
    int at = Math.max(1, Math.min(number, stretches));
    return new PartsPage(
        found.subList((at - 1) * AT_ONCE, Math.min(found.size(), at * AT_ONCE)),
        agent.shop().kindNames(),
        search,
        all,
        at,
        stretches);
  }

  private static String text(PartLine part) {
    return String.join(
            " ",
            part.id(),
            part.kind(),
            part.variant().orElse(""),
            part.fitted().map(PartLine.Place::printer).orElse(part.ending()))
        .toLowerCase(Locale.ROOT);
  }
}
