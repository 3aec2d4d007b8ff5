package meltkeeper.life;

/**
 * How long one variant of a kind lasts, leaning on its kind where it has little to say.
 *
 * @param variant its name
 * @param parts of it
 * @param failures among them
 * @param lifeHours its characteristic life, reference hours
 * @param probabilityLonger that it lasts longer than the kind as a whole; one half when nothing
 *     tells them apart
 * @param posterior all that is believed of it, for advice and risk
 */
public record VariantLife(
    String variant,
    int parts,
    int failures,
    Estimate lifeHours,
    double probabilityLonger,
    Posterior posterior) {}
