package meltkeeper.jam;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What was learned of materials that are not loaded now, the newest few. Mutable. */
final class Materials {

  private static final int MOST = 5;

  private final Map<String, Learned> parked = new LinkedHashMap<>();
  private String loaded = "";

  /**
   * What is known of the material now loaded; the one before is put aside. The first name that is
   * ever told belongs to what was learned until then.
   */
  Learned change(String material, Learned present, WatchSettings by) {
    if (material.equals(loaded)) {
      return present;
    }
    if (!loaded.isEmpty()) {
      parked.put(loaded, present);
    }
    boolean first = loaded.isEmpty() && parked.isEmpty();
    loaded = material;
    if (first) {
      return present;
    }
    Learned known =
        Optional.ofNullable(parked.remove(material))
            .orElseGet(() -> present.forAnotherMaterial(by));
    if (parked.size() > MOST) {
      parked.remove(parked.keySet().iterator().next());
    }
    return known;
  }

  void keep(Memory memory, WatchSettings by) {
    loaded = memory.word("loaded", loaded);
    String names = memory.word("parked", String.join("\n", parked.keySet()));
    if (parked.isEmpty() && !names.isEmpty()) {
      names.lines().forEach(name -> parked.put(name, new Learned(by)));
    }
    int place = 0;
    for (Learned learned : parked.values()) {
      learned.keep(memory.within("parked" + place));
      place++;
    }
  }
}
