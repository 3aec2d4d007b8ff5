package meltkeeper.desk;

import meltkeeper.store.Store;

/**
 * The shop's desk: where its questions are answered and its acts are noted. Safe for any thread.
 *
 * @param parts questions about parts
 * @param acts what is done with parts
 * @param swaps what is done in one go beside a printer
 * @param paper a past kept on paper
 * @param reports hours, swaps, jams, costs
 * @param alerts what called, and whom
 * @param questions what the shop is asked
 */
public record Desk(
    PartAnswers parts,
    PartActs acts,
    SwapActs swaps,
    PaperDesk paper,
    ReportDesk reports,
    AlertDesk alerts,
    QuestionDesk questions) {

  /** A desk over a store, for the shop as it is configured. */
  public static Desk of(Store store, Shop shop) {
    PartAnswers answers = new PartAnswers(store, shop);
    return new Desk(
        answers,
        new PartActs(store, shop, answers),
        new SwapActs(store, shop, answers),
        new PaperDesk(store, shop),
        new ReportDesk(store, shop),
        new AlertDesk(store.outbox()),
        new QuestionDesk(store, shop));
  }
}
