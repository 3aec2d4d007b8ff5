package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** What holds for each plot; also lays all samples out as {@code target/plots/index.html}. */
class EveryPlotTest {

  private static final Pattern MORE_THAN_TENTHS = Pattern.compile("[0-9]\\.[0-9]{2}");
  private static final Set<String> NUMBERS =
      Set.of("d", "x", "y", "width", "height", "viewBox", "fill-opacity", "stroke-width");

  static Stream<Plot> plots() {
    return Samples.all().values().stream();
  }

  @ParameterizedTest
  @MethodSource("plots")
  void plot_readAloud_saysTitleThenDescription(Plot plot) {
    Drawing drawing = Drawing.of(plot);
    assertThat(drawing.root().getAttribute("role")).isEqualTo("img");
    List<Element> first = drawing.elements().subList(0, 2);
    assertThat(first).extracting(Element::getTagName).containsExactly("title", "desc");
    assertThat(first).allSatisfy(element -> assertThat(element.getTextContent()).isNotBlank());
  }

  @ParameterizedTest
  @MethodSource("plots")
  void plot_underStrictPolicy_holdsNothingToBlock(Plot plot) {
    assertThat(Drawing.of(plot).elements())
        .allSatisfy(
            element -> {
              assertThat(element.getTagName()).isIn("title", "desc", "path", "text");
              assertThat(element.hasAttribute("style")).isFalse();
              assertThat(element.hasAttribute("id")).isFalse();
            });
    assertThat(plot.svg()).doesNotContain("url(", "href");
  }

  @ParameterizedTest
  @MethodSource("plots")
  void coordinates_areTenthsOfPixels(Plot plot) {
    for (Element element : Drawing.of(plot).elements()) {
      for (String attribute : NUMBERS) {
        assertThat(element.getAttribute(attribute))
            .doesNotContainPattern(MORE_THAN_TENTHS)
            .doesNotContain("NaN", "E");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("plots")
  void everyCorner_liesInTheViewBox(Plot plot) {
    Drawing drawing = Drawing.of(plot);
    String[] box = drawing.root().getAttribute("viewBox").split(" ", -1);
    double width = Double.parseDouble(box[2]);
    double height = Double.parseDouble(box[3]);
    for (Element path : drawing.elements()) {
      assertThat(Drawing.corners(path))
          .allSatisfy(
              corner -> {
                assertThat(corner.x()).isBetween(0.0, width);
                assertThat(corner.y()).isBetween(0.0, height);
              });
    }
  }

  @Test
  void stylesheet_namesOnlyClassesThatAreDrawn() {
    Set<String> drawn =
        plots()
            .map(Drawing::of)
            .flatMap(
                drawing -> Stream.concat(Stream.of(drawing.root()), drawing.elements().stream()))
            .flatMap(element -> Drawing.classes(element).stream())
            .collect(Collectors.toSet());
    assertThat(Pattern.compile("\\.(plot[-a-z0-9]*)").matcher(PlotStyle.CSS).results())
        .isNotEmpty()
        .allSatisfy(name -> assertThat(drawn).contains(name.group(1)));
    assertThat(PlotStyle.CSS).doesNotContain("url(", "@import", "<");
  }

  @Test
  void samples_laidOut_makeAPageToLookAt() throws IOException {
    Path folder = Files.createDirectories(Path.of("target", "plots"));
    StringBuilder page =
        new StringBuilder("<!doctype html><meta charset=utf-8><title>Plots</title>");
    page.append("<meta name=viewport content='width=device-width'><style>");
    page.append(":root{color-scheme:light dark}body{font:1rem/1.4 sans-serif;margin:1rem}");
    page.append("figure{display:inline-block;margin:0 1rem 1rem 0;max-width:100%}");
    page.append(PlotStyle.CSS).append("</style>");
    for (Map.Entry<String, Plot> sample : Samples.all().entrySet()) {
      String svg = sample.getValue().svg();
      Files.writeString(folder.resolve(sample.getKey() + ".svg"), svg);
      page.append("<figure>").append(svg).append("</figure>");
    }
    Path index = Files.writeString(folder.resolve("index.html"), page);
    assertThat(index).content().contains(PlotStyle.CSS, "How long liners last");
  }
}
