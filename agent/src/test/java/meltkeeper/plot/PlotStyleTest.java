package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Every colour stands out from its ground. Luminance, contrast and the limit of 4.5 to 1 for text
 * are those of WCAG 2.1 (success criterion 1.4.3, cited from memory).
 */
class PlotStyleTest {

  private static final int DARK_BEGINS = PlotStyle.CSS.indexOf("@media");

  @Test
  void colours_onALightPage_areReadable() {
    assertThat(colours(PlotStyle.CSS.substring(0, DARK_BEGINS)))
        .hasSize(6)
        .allSatisfy(
            colour -> {
              assertThat(contrast(colour, 0xffffff)).as("#%06x", colour).isGreaterThan(4.5);
              assertThat(contrast(colour, 0xfbfaf7)).as("#%06x", colour).isGreaterThan(4.5);
            });
  }

  @Test
  void colours_onADarkPage_areReadable() {
    assertThat(colours(PlotStyle.CSS.substring(DARK_BEGINS)))
        .hasSize(6)
        .allSatisfy(
            colour ->
                assertThat(contrast(colour, 0x1e2226)).as("#%06x", colour).isGreaterThan(4.5));
  }

  @Test
  void contrast_ofBlackOnWhite_isTwentyOne() {
    assertThat(contrast(0x000000, 0xffffff)).isEqualTo(21); // WCAG 2.1: from 1 to 21
  }

  private static List<Integer> colours(String css) {
    return Pattern.compile("#([0-9a-f]{6})")
        .matcher(css)
        .results()
        .map(match -> Integer.parseInt(match.group(1), 16))
        .toList();
  }

  private static double contrast(int one, int other) {
    double lighter = Math.max(luminance(one), luminance(other));
    double darker = Math.min(luminance(one), luminance(other));
    return (lighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(int colour) {
    return 0.2126 * linear(colour >> 16) + 0.7152 * linear(colour >> 8) + 0.0722 * linear(colour);
  }

  private static double linear(int channel) {
    double share = (channel & 0xff) / 255.0;
    return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
