package meltkeeper.web.page;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.List;
import java.util.Map;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.web.view.AgentView;

/**
 * A sheet of labels for parts, to be printed, each with a code that opens the part's view.
 *
 * @param server the address that the codes lead to
 */
public record LabelsPage(String server, List<Label> labels) {

  private static final int QUIET_ZONE = 2;

  /** One label. */
  public record Label(PartLine part, String code) {}

  static LabelsPage of(AgentView agent, String server, List<String> ids) {
    return new LabelsPage(
        server,
        agent.parts(PartFilter.IN_USE).stream()
            .filter(part -> ids.isEmpty() || ids.contains(part.id()))
            .map(part -> new Label(part, code(server + Addresses.part(part.id()))))
            .toList());
  }

  /** A QR code (ISO/IEC 18004) as an SVG picture that is hidden from those who hear the page. */
  static String code(String text) {
    BitMatrix bits;
    try {
      bits =
          new QRCodeWriter()
              .encode(
                  text,
                  BarcodeFormat.QR_CODE,
                  0,
                  0,
                  Map.of(
                      EncodeHintType.MARGIN,
                      QUIET_ZONE,
                      EncodeHintType.ERROR_CORRECTION,
                      ErrorCorrectionLevel.M));
    } catch (WriterException e) {
      throw new IllegalArgumentException("too long for a code: " + text, e);
    }
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < bits.getHeight(); y++) {
      for (int x = 0; x < bits.getWidth(); x++) {
        if (bits.get(x, y)) {
          path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
        }
      }
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"code\" aria-hidden=\"true\""
        + " shape-rendering=\"crispEdges\" viewBox=\"0 0 "
        + bits.getWidth()
        + ' '
        + bits.getHeight()
        + "\"><path fill=\"#fff\" d=\"M0 0h"
        + bits.getWidth()
        + 'v'
        + bits.getHeight()
        + "H0z\"/><path fill=\"#000\" d=\""
        + path
        + "\"/></svg>";
  }
}
