package meltkeeper.web.page;

import java.util.List;
import meltkeeper.desk.AlertLine;
import meltkeeper.web.view.AgentView;

/** What called, and whom. */
public record AlertsPage(List<AlertLine> alerts) {

  private static final int SHOWN = 100;

  public AlertsPage {
    alerts = List.copyOf(alerts);
  }

  static AlertsPage of(AgentView agent) {
    return new AlertsPage(agent.desk().alerts().latest(SHOWN));
  }
}
