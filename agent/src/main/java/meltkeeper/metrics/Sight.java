package meltkeeper.metrics;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import meltkeeper.pipeline.Live;

/**
 * Everything that one scrape shows, taken at one moment.
 *
 * @param hotEnds those of {@code live}, with what they are held to
 * @param parts on printers now, or until a short time ago
 * @param forecasts of parts on printers, as last reckoned
 * @param sources by name: true while it is heard
 * @param routes that alerts go
 * @param storeFreeBytes left where the store is kept, if that can be told
 */
public record Sight(
    Live live,
    List<HotEndSight> hotEnds,
    List<ShownPart> parts,
    List<PartForecast> forecasts,
    Map<String, Boolean> sources,
    List<RouteSight> routes,
    OptionalLong storeFreeBytes) {

  public Sight {
    hotEnds = List.copyOf(hotEnds);
    parts = List.copyOf(parts);
    forecasts = List.copyOf(forecasts);
    sources = Map.copyOf(sources);
    routes = List.copyOf(routes);
  }
}
