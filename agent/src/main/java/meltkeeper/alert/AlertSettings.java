package meltkeeper.alert;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.alert.route.JamAction;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.store.AlertTopic;

/**
 * Who is called, and when.
 *
 * @param remind after so long an episode is told again, unless somebody acknowledged it
 * @param oldAfter a reading older than this calls nobody
 * @param idleAfter hot and without work for so long calls
 * @param silentAfter unheard for so long while hot calls
 * @param atRiskAbove a batch that a part fails in with more than this calls, 0 to 1
 * @param attempts after so many that fail, a delivery is given up
 * @param outbox how much it holds
 * @param action what is done at a stall, if anything
 */
public record AlertSettings(
    Duration remind,
    Duration oldAfter,
    Duration idleAfter,
    Duration silentAfter,
    double atRiskAbove,
    int attempts,
    OutboxLimits outbox,
    List<RouteSettings> routes,
    Optional<JamAction> action) {

  public AlertSettings {
    routes = List.copyOf(routes);
  }

  /** The names of the routes that tell of a topic. */
  List<String> tellers(AlertTopic topic) {
    return routes.stream()
        .filter(route -> route.topics().contains(topic))
        .map(RouteSettings::name)
        .toList();
  }

  /** The names of the routes that want a topic; the jam action is one of them. */
  public List<String> routesFor(AlertTopic topic) {
    List<String> names = new ArrayList<>(tellers(topic));
    if (topic == AlertTopic.JAM_STALLED && action.isPresent()) {
      names.add(JamAction.NAME);
    }
    return names;
  }
}
