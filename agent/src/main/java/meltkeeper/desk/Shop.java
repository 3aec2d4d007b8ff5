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
 * @param printers that are listed, by name
 * @param kinds of parts
 * @param costs empty when the shop names none
 * @param zone in which the shop tells times
 */
public record Shop(List<String> printers, List<Kind> kinds, Optional<Costs> costs, ZoneId zone) {

  /** So many names still read well in a line. */
  private static final int FEW = 20;

  public Shop {
    printers = printers.stream().sorted().toList();
    kinds = List.copyOf(kinds);
  }

  /** The names of its kinds. */
  public List<String> kindNames() {
    return kinds.stream().map(Kind::name).toList();
  }

  /** The kind of that name. */
  public Optional<Kind> kind(String name) {
    return kinds.stream().filter(kind -> kind.name().equals(name)).findFirst();
  }

  /** The fault of a printer that is not listed. */
  public List<Fault> checkPrinter(String printer) {
    if (printers.contains(printer)) {
      return List.of();
    }
    return List.of(
        Fault.of(
            "printer",
            printer,
            allowedPrinters(),
            Nearest.to(printer, printers)
                .map(near -> "did you mean " + near + "?")
                .orElse("or add it under printers: in the configuration")));
  }

  private String allowedPrinters() {
    if (printers.isEmpty()) {
      return "a printer of the configuration, which lists none";
    }
    return printers.size() > FEW
        ? "one of the " + printers.size() + " printers of the configuration"
        : "one of " + String.join(", ", printers);
  }

  /** The faults of a hot end that cannot be. */
  public List<Fault> checkHotEnd(String printer, int index) {
    List<Fault> faults = new ArrayList<>(checkPrinter(printer));
    if (index < 0 || index > HotEnd.MAX_INDEX) {
      faults.add(Fault.of("hot-end", index, "0 to " + HotEnd.MAX_INDEX, "the first hot end is 0"));
    }
    return faults;
  }
}
