package meltkeeper.metrics;

import java.util.List;
import java.util.Map;
import meltkeeper.pipeline.Live;

/**
 * Everything that one scrape shows, taken at one moment.
 *
 * @param parts on printers now
 * @param forecasts of parts on printers, as last reckoned
 * @param sources by name: true while it is heard
 * @param routes that alerts go
 */
public record Sight(
    Live live,
    List<FittedPart> parts,
    List<PartForecast> forecasts,
    Map<String, Boolean> sources,
    List<RouteSight> routes) {

  public Sight {
    parts = List.copyOf(parts);
    forecasts = List.copyOf(forecasts);
    sources = Map.copyOf(sources);
    routes = List.copyOf(routes);
  }
}
