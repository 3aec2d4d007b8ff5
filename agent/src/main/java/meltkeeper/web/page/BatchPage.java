package meltkeeper.web.page;

import java.util.List;
import java.util.Optional;
import meltkeeper.outlook.RiskAnswer;
import meltkeeper.web.view.AgentView;

/**
 * Whether a batch gets through.
 *
 * @param printers of the shop
 * @param printer that was chosen, blank for none
 * @param hours as they were typed
 * @param celsius as they were typed
 * @param atMost percent, as they were typed
 * @param answer empty before anything was asked
 */
public record BatchPage(
    List<String> printers,
    String printer,
    String hours,
    String celsius,
    String atMost,
    Optional<RiskAnswer> answer) {

  static final String USUAL_RISK = "5";

  /** The advice as a sentence. */
  public String advice() {
    return answer.map(RiskAnswer::advice).map(Sentence::of).orElse("");
  }

  static BatchPage unasked(AgentView agent, String printer) {
    return new BatchPage(agent.shop().printers(), printer, "", "", USUAL_RISK, Optional.empty());
  }
}
