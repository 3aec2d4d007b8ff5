package meltkeeper.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.desk.PartLine;
import meltkeeper.pipeline.Live;

/**
 * Everything that the page shows, taken at one moment.
 *
 * @param printers heard so far
 * @param parts known to the shop
 * @param sources by name: true while connected
 * @param unknownPrinters heard but not listed, in words
 * @param routeTroubles by route of alerts: why its last try failed, empty while all is well
 * @param storeTrouble why the store takes no commits; empty while it does
 */
public record Overview(
    List<PrinterView> printers,
    List<PartLine> parts,
    Map<String, Boolean> sources,
    List<String> unknownPrinters,
    Map<String, String> routeTroubles,
    Optional<String> storeTrouble) {

  /** What the live snapshot and the parts show. */
  public static Overview of(
      Live live,
      List<PartLine> parts,
      Map<String, Boolean> sources,
      Map<String, String> routeTroubles) {
    return new Overview(
        PrinterView.of(live),
        parts,
        sources,
        live.unknownPrinters(),
        routeTroubles,
        live.trouble());
  }

  public Overview {
    printers = List.copyOf(printers);
    parts = List.copyOf(parts);
    sources = Map.copyOf(sources);
    routeTroubles = Map.copyOf(routeTroubles);
    unknownPrinters = List.copyOf(unknownPrinters);
  }

  /** Where a part is, or how it ended, for a person. */
  public static String place(PartLine part) {
    return part.fitted()
        .map(at -> "on " + at.printer() + (at.hotEnd() == 0 ? "" : "/" + at.hotEnd()))
        .orElse(part.ending());
  }

  /** A number for a person. */
  public static String tenths(BigDecimal value) {
    return value.setScale(1, RoundingMode.HALF_UP).toPlainString();
  }
}
