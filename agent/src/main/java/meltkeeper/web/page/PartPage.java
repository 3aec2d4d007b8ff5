package meltkeeper.web.page;

import java.util.List;
import java.util.Optional;
import meltkeeper.desk.PartAnswer;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.web.view.AgentView;

/**
 * One part.
 *
 * @param wear while it is fitted
 * @param hours a plot of hot hours by temperature; empty for none
 * @param printers that it could be fitted on
 * @param failed true when it last came off because of a jam or wear
 * @param excused true when that was said not to be its fault
 */
public record PartPage(
    PartAnswer part,
    PartLine line,
    Optional<Wear> wear,
    Optional<String> hours,
    List<String> printers,
    boolean failed,
    boolean excused) {

  static PartPage of(AgentView agent, Frame frame, String id) {
    PartAnswer part = agent.desk().parts().part(id);
    PartLine line =
        agent.parts(PartFilter.ALL).stream()
            .filter(one -> one.id().equals(id))
            .findFirst()
            .orElse(part.line());
    Optional<FittedOutlook> outlook =
        agent.outlook().latest().stream().filter(one -> one.id().equals(id)).findFirst();
    boolean excused = line.ending().equals("excused");
    return new PartPage(
        part,
        line,
        outlook.map(fitted -> Wear.of(fitted, frame)),
        Optional.of(line.total().hotSeconds())
            .filter(seconds -> !seconds.isEmpty())
            .map(seconds -> LifePlots.hours(id, seconds)),
        agent.shop().printers(),
        excused || line.ending().equals("jam") || line.ending().equals("worn"),
        excused);
  }
}
