import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Prints whose libraries the jar holds, and under which licences, from the bill of materials. One
 * without a licence fails the build.
 */
final class Licences {

  private Licences() {}

  public static void main(String[] arguments) throws IOException {
    System.out.print(
        """
        # Whose work is in it
        `meltkeeper.jar` holds these libraries, each under its own licence; where there are several, you may choose.
        Their texts and notices are in `META-INF` within the jar. `meltkeeper-bom.json` is the same list for programs
        (CycloneDX), with checksums.

        | library | version | licence |
        |---|---|---|
        """);
    TreeSet<String> rows = new TreeSet<>();
    for (JsonNode component : new ObjectMapper().readTree(new File(arguments[0])).at("/components")) {
      if (!component.path("group").asText().equals("meltkeeper")) {
        rows.add(row(component));
      }
    }
    rows.forEach(System.out::println);
  }

  private static String row(JsonNode component) {
    String library = component.path("group").asText() + ":" + component.path("name").asText();
    List<String> licences = new ArrayList<>();
    for (JsonNode choice : component.path("licenses")) {
      String id = choice.at("/license/id").asText(choice.at("/license/name").asText());
      licences.add(choice.path("expression").asText(id));
    }
    licences.removeIf(String::isBlank);
    if (licences.isEmpty()) {
      throw new IllegalStateException(
          library + " names no licence in its POM; find out, or do without it");
    }
    return "| %s | %s | %s |"
        .formatted(library, component.path("version").asText(), String.join(", ", licences));
  }
}
