/**
 * How long parts last: exposures and endings in; life, replacement age and risk out. Reference life
 * is Weibull, hotter hours count for more by the halving interval, and a shop's own swaps and jams
 * update what it believed. Pure: no clock, no randomness without a seed, no input or output.
 *
 * <p>{@link meltkeeper.life.Posterior} is the model, {@link meltkeeper.life.KindLife} its answer
 * for a kind of part; {@link meltkeeper.life.LifeRegression} is plain maximum likelihood beside it.
 * Everything here is immutable once built and may be shared between threads.
 */
@NullMarked
package meltkeeper.life;

import org.jspecify.annotations.NullMarked;
