package meltkeeper.plot;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A plot read back as XML. */
record Drawing(Element root) {

  private static final Pattern STEP = Pattern.compile("[ML](-?[0-9.]+) (-?[0-9.]+)");

  static Drawing of(Plot plot) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      return new Drawing(
          factory
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(plot.svg())))
              .getDocumentElement());
    } catch (Exception e) {
      throw new AssertionError("not well-formed: " + plot.svg(), e);
    }
  }

  List<Element> elements() {
    NodeList all = root.getElementsByTagName("*");
    return IntStream.range(0, all.getLength()).mapToObj(i -> (Element) all.item(i)).toList();
  }

  /** Elements of a class, in the order of drawing. */
  List<Element> ofClass(String name) {
    return elements().stream().filter(element -> classes(element).contains(name)).toList();
  }

  List<String> texts(String className) {
    return ofClass(className).stream()
        .filter(element -> element.getTagName().equals("text"))
        .map(Element::getTextContent)
        .toList();
  }

  /** The corners of the last path of a class; a legend's sample comes before what it stands for. */
  List<Point> corners(String className) {
    List<Element> paths =
        ofClass(className).stream().filter(e -> e.getTagName().equals("path")).toList();
    return corners(paths.get(paths.size() - 1));
  }

  static List<Point> corners(Element path) {
    List<Point> corners = new ArrayList<>();
    for (MatchResult step : STEP.matcher(path.getAttribute("d")).results().toList()) {
      corners.add(new Point(Double.parseDouble(step.group(1)), Double.parseDouble(step.group(2))));
    }
    return corners;
  }

  static List<String> classes(Element element) {
    return Arrays.asList(element.getAttribute("class").split(" "));
  }
}
