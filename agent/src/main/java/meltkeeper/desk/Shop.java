package meltkeeper.desk;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Nearest;

/**
 * What the configuration says of the shop.
 *
 * @param hotEnds of every printer that is listed
 * @param kinds of parts
 * @param zone in which the shop tells times
 */
public record Shop(List<HotEnd> hotEnds, List<Kind> kinds, Costs costs, ZoneId zone) {

  public Shop {
    hotEnds = hotEnds.stream().sorted().toList();
    kinds = List.copyOf(kinds);
  }

  /** The names of its kinds. */
  public List<String> kindNames() {
    return kinds.stream().map(Kind::name).toList();
  }

  /** The names of its printers. */
  public List<String> printers() {
    return hotEnds.stream().map(HotEnd::printer).distinct().toList();
  }

  Optional<Kind> kind(String name) {
    return kinds.stream().filter(kind -> kind.name().equals(name)).findFirst();
  }

  List<Fault> checkPrinter(String printer) {
    if (printers().contains(printer)) {
      return List.of();
    }
    return List.of(
        Fault.of(
            "printer",
            printer,
            printers().isEmpty()
                ? "a printer of the configuration, which lists none"
                : "one of " + String.join(", ", printers()),
            Nearest.to(printer, printers())
                .map(near -> "did you mean " + near + "?")
                .orElse("or add it under printers: in the configuration")));
  }

  List<Fault> checkHotEnd(String printer, int index) {
    List<Fault> faults = new ArrayList<>(checkPrinter(printer));
    if (faults.isEmpty()
        && hotEnds.stream().noneMatch(h -> h.printer().equals(printer) && h.index() == index)) {
      List<String> known =
          hotEnds.stream()
              .filter(h -> h.printer().equals(printer))
              .map(h -> String.valueOf(h.index()))
              .toList();
      faults.add(
          Fault.of("hot-end", index, "hot ends of " + printer + ": " + String.join(", ", known)));
    }
    return faults;
  }
}
